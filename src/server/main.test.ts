import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "roomwake-main-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts the program as a person does, and gives what it said when it ended by itself. */
function ended(
  ...flags: readonly string[]
): Promise<{ readonly code: number | null; readonly said: string }> {
  const root = fileURLToPath(new URL("../..", import.meta.url));
  const program = spawn(process.execPath, ["--import", "tsx", "src/server/main.ts", ...flags], { cwd: root });
  let said = "";
  program.stderr.on("data", (part: Buffer) => {
    said += part.toString();
  });
  return new Promise((done) => program.once("exit", (code) => done({ code, said })));
}

test("flags that cannot be understood end the program with a sentence and 2", async () => {
  expect(await ended("--port", "many")).toEqual({
    code: 2,
    said: "The command line cannot be understood: --port many is not a port number.\nUse --port NUMBER and --data FOLDER, or neither.\n",
  });
  const unknown = await ended("--colour");
  expect([unknown.code, unknown.said]).toEqual([
    2,
    expect.stringMatching(/^The command line cannot be understood: Unknown option '--colour'/),
  ]);
});

test("a port that another program has, and a folder that is a file, are said to be so", async () => {
  const other = createServer().listen(0, "127.0.0.1");
  await new Promise((done) => other.once("listening", done));
  const { port } = other.address() as { port: number };
  const taken = await ended("--port", String(port), "--data", join(folder, "a"));
  other.close();
  expect([taken.code, taken.said]).toEqual([
    2,
    expect.stringContaining(`Port ${port} on this machine is in use by another program.`),
  ]);
  writeFileSync(join(folder, "file"), "");
  const unusable = await ended("--port", "0", "--data", join(folder, "file", "jobs"));
  expect([unusable.code, unusable.said]).toEqual([
    2,
    expect.stringContaining(`The folder for jobs, ${join(folder, "file", "jobs")}, cannot be used: `),
  ]);
});
