import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type CoverModel, type Site, solveCover } from "#engine";
import { parseJob, siteOf } from "#job";
import { loadSolver } from "#solver";
import { chooseColumns } from "../src/engine/placement/choose-columns.ts";
import { sampledRows } from "../src/engine/placement/demand-rows.ts";
import { coverable } from "../src/engine/placement/find-strict.ts";
import { sampleSpacing } from "../src/engine/placement/place-room.ts";
import { roomTask } from "../src/engine/placement/task.ts";
import { realFiles } from "../test/real-files.ts";
import type { BenchRow } from "./bench.ts";

/** Longest time for one room, on both sides. [s] */
const LIMIT = 10;

/** A whole building placed by the command; and the matrices of its rooms handed to the solver alone. */
export async function rows(): Promise<readonly BenchRow[]> {
  const models = realFiles("ifc");
  const command = new URL("../dist/cli/main.mjs", import.meta.url).pathname;
  if (!models || !existsSync(command)) return [];
  const folder = mkdtempSync(join(tmpdir(), "roomwake-bench-"));
  const job = join(folder, "office.job.json");
  const run = (...words: string[]): string =>
    spawnSync(process.execPath, [command, ...words, "--json"], { encoding: "utf8", maxBuffer: 1e9 }).stdout;
  run("import", `${models}/office-institute-82rooms-ifc2x3.ifc`, "-o", job);
  const placed = JSON.parse(run("place", job, "--seconds", String(LIMIT))) as {
    readonly seconds: number;
    readonly rooms: readonly { readonly fewest: boolean; readonly devices: readonly unknown[] }[];
  };
  const parsed = parseJob(readFileSync(job, "utf8"));
  rmSync(folder, { recursive: true });
  if (!parsed.job) throw new Error("The imported office is no job.");
  const fewest = placed.rooms.filter((room) => room.fewest).length;
  const devices = placed.rooms.reduce((sum, room) => sum + room.devices.length, 0);
  return [
    {
      what: `Office of 82 rooms placed by the command, at most ${LIMIT} s a room`,
      ours: `${placed.seconds.toFixed(0)} s, ${devices} devices`,
      other: `${placed.rooms.length} rooms`,
      ratio: `${fewest} with the fewest possible`,
      goal: "under 60 s",
    },
    await alone(siteOf(parsed.job).site),
  ];
}

/** Sum over the rooms: search, prices and solver together, against the solver alone with the same limit a room. */
async function alone(site: Site): Promise<BenchRow> {
  const solver = await loadSolver();
  const now = (): number => performance.now() / 1000;
  const world = { now, cancelled: () => false, breathe: async () => {}, progress: () => {}, solver };
  const [took, cost]: [[number, number], [number, number]] = [
    [0, 0],
    [0, 0],
  ];
  let count = 0;
  for (const model of await officeMatrices(site, world)) {
    const start = now();
    const ours = await solveCover(model, { ...world, seed: 1, until: start + LIMIT, aim: "prove" });
    const middle = now();
    const other = await solver.solve(model, { seconds: LIMIT });
    took[0] += middle - start;
    took[1] += now() - middle;
    if (ours.cost > (other.cost ?? Number.POSITIVE_INFINITY) + 1e-9)
      throw new Error(`Dearer than the solver alone: ${ours.cost} against ${other.cost}`);
    cost[0] += ours.cost;
    cost[1] += other.cost ?? Number.POSITIVE_INFINITY;
    count++;
  }
  return {
    what: `The same office, the matrices of ${count} rooms`,
    ours: `${took[0].toFixed(1)} s, cost ${cost[0]}`,
    other: `solver alone ${took[1].toFixed(1)} s, cost ${cost[1]}`,
    ratio: `${(took[1] / took[0]).toFixed(1)} times faster`,
    goal: "at least 5 at the same or better cost",
  };
}

async function officeMatrices(
  site: Site,
  world: Parameters<typeof chooseColumns>[1]["world"],
): Promise<readonly CoverModel[]> {
  const matrices: CoverModel[] = [];
  for (const room of site.rooms) {
    const options = { room: room.id, seconds: LIMIT, seed: 1, bound: "candidates", alternatives: 0 } as const;
    const task = roomTask(site, options);
    if (task.models.length === 0 || task.parts.length === 0) continue;
    const rows = task.parts.flatMap((part) => sampledRows(part, sampleSpacing(task)));
    const { matrix } = await chooseColumns(task, { rows, world, until: world.now() + LIMIT });
    matrices.push(coverable(matrix).model);
  }
  return matrices;
}
