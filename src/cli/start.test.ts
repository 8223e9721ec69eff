import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runHere } from "./run-here.fixture.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-start-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts with these flags, and stops as soon as the address was printed. */
async function told(...flags: readonly string[]) {
  const stop = new AbortController();
  let out = "";
  const { exit, notes } = await runHere(folder, ["start", ...flags], {
    print: (text) => {
      out += text;
      stop.abort();
    },
    cancelled: stop.signal,
  });
  return { exit, out, notes };
}

test("start says where the page is and where the jobs are, and a stop is no fault", async () => {
  const { exit, out, notes } = await told("--port", "0", "--data", "jobs");
  expect([exit, notes]).toEqual([0, ""]);
  expect(out).toMatch(
    /^Roomwake is at http:\/\/127\.0\.0\.1:\d+\/\?token=[0-9a-f]{48}\nStop it with Ctrl\+C\. /,
  );
  expect(out).toContain(`Jobs are kept in ${join(folder, "jobs")}.\n`);
  const asData = JSON.parse((await told("--port", "0", "--data", "jobs", "--json")).out);
  expect(Object.keys(asData)).toEqual(["address", "data"]);
  expect(asData.data).toBe(join(folder, "jobs"));
});

test.each([
  [["--port", "many"], "--port many is not a port number"],
  [["--port", "65536"], "--port 65536 is not a port number"],
  [["--port", ""], "--port  is not a port number"],
  [["--port", "1e3"], "--port 1e3 is not a port number"],
  [["--colour"], "Unknown option '--colour'"],
  [["--host", "0.0.0.0"], "it serves this machine only, at 127.0.0.1; there is no --host"],
  [["house.job.json"], "it takes no file"],
])("start %j is refused in words, and nothing is served", async (flags, reason) => {
  expect(await told(...flags)).toEqual({
    exit: 2,
    out: "",
    notes: `must   The command cannot be carried out: ${reason}.\n       Run roomwake start --help for what it takes.\n`,
  });
});

test("a port that is taken, and a folder that is a file, are said to be so", async () => {
  const other = createServer().listen(0, "127.0.0.1");
  await new Promise((done) => other.once("listening", done));
  const { port } = other.address() as { port: number };
  const taken = await told("--port", String(port), "--data", "taken");
  other.close();
  expect([taken.exit, taken.out]).toEqual([2, ""]);
  expect(taken.notes).toContain(
    `Port ${port} on this machine is in use: Roomwake runs already, or another program has it.`,
  );
  writeFileSync(join(folder, "file"), "");
  const unusable = await told("--port", "0", "--data", "file/jobs");
  expect([unusable.exit, unusable.out]).toEqual([2, ""]);
  expect(unusable.notes).toContain(
    `The folder for jobs, ${join(folder, "file", "jobs")}, cannot be used: a part of its path is not a folder.`,
  );
});
