import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { BenchRow } from "./bench.ts";

/** The whole pack of a building, in a process of its own: the writer of workbooks starts workers, which a script given on the command line cannot. */
export async function rows(): Promise<readonly BenchRow[]> {
  const script = fileURLToPath(new URL("./pack-building.ts", import.meta.url));
  const { stdout, status } = spawnSync(process.execPath, ["--import", "tsx", script], {
    encoding: "utf8",
    maxBuffer: 1e8,
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (status !== 0) throw new Error(`The pack ended with ${status}`);
  return [JSON.parse(stdout) as BenchRow];
}
