// Measures ratios, each part in a process of its own and writes them to bench/RESULTS.md; never a timed test.
import { spawnSync } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { availableParallelism, totalmem } from "node:os";
import { fileURLToPath } from "node:url";

/** One line of the table: what was compared, our figure, the other's, and the ratio with its goal. */
export interface BenchRow {
  readonly what: string;
  readonly ours: string;
  readonly other: string;
  readonly ratio: string;
  readonly goal: string;
}

const folder = fileURLToPath(new URL(".", import.meta.url));
const wanted = process.argv.slice(2);
const parts = readdirSync(folder)
  .filter((name) => name.endsWith(".bench-part.ts"))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
  .sort();

const sections: string[] = [];
for (const part of parts) {
  const table = alone(part);
  for (const row of table)
    console.log(`${row.what}: ours ${row.ours}, other ${row.other}, ${row.ratio} (goal ${row.goal})`);
  sections.push(
    [
      `## ${part.replace(".bench-part.ts", "")}`,
      "",
      "| what | ours | other | ratio | goal |",
      "|---|---|---|---|---|",
      ...table.map((row) => `| ${row.what} | ${row.ours} | ${row.other} | ${row.ratio} | ${row.goal} |`),
      "",
    ].join("\n"),
  );
}

/** Each part in a process of its own: what one leaves in memory slows the next. */
function alone(part: string): readonly BenchRow[] {
  const script = `import("./${part}").then(async ({ rows }) => process.stdout.write("\\u0000" + JSON.stringify(await rows())))`;
  const { stdout, status } = spawnSync(
    process.execPath,
    ["--import", "tsx", "--input-type=module", "--eval", script],
    { cwd: folder, encoding: "utf8", maxBuffer: 1e8, stdio: ["ignore", "pipe", "inherit"] },
  );
  if (status !== 0) throw new Error(`${part} ended with ${status}`);
  return JSON.parse(stdout.slice(stdout.lastIndexOf("\u0000") + 1)) as readonly BenchRow[];
}

const machine = `${availableParallelism()} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
if (wanted.length === 0) {
  writeFileSync(
    `${folder}RESULTS.md`,
    [
      "# Measured ratios",
      "",
      `${new Date().toISOString().slice(0, 10)}, ${machine}. Both sides of a ratio run one after the other in one run.`,
      "",
      ...sections,
    ].join("\n"),
  );
}
