// Measures ratios within one run and writes them to bench/RESULTS.md; never a timed test.
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
  const { rows } = (await import(`./${part}`)) as { rows: () => Promise<readonly BenchRow[]> };
  const table = await rows();
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
