import {
  type CoverModel,
  type DetectorModel,
  type Outline,
  type Point,
  placeInOutline,
  placeRoom,
  planningDefaults,
  type Site,
  sceneOf,
  solveCover,
  zoneInScene,
} from "#engine";
import { loadSolver } from "#solver";
import type { BenchRow } from "./bench.ts";

/** Time that both sides get. [s] */
const LIMIT = 60;

/** Search, prices and solver together against the solver alone, on the same matrix with the same limit; and a whole open hall. */
export async function rows(): Promise<readonly BenchRow[]> {
  const solver = await loadSolver();
  const now = (): number => performance.now() / 1000;
  const host = { now, cancelled: () => false, breathe: async () => {} };
  const found: BenchRow[] = [];
  for (const { what, model } of [
    { what: "L-room 20 × 15 m, 0.5 m, one kind", model: matrixOf(lRoom, { spacing: 0.5, reaches: [4] }) },
    {
      what: "L-room 20 × 15 m, 0.5 m, three kinds",
      model: matrixOf(lRoom, { spacing: 0.5, reaches: [3, 4, 5.5] }),
    },
  ]) {
    const began = now();
    const ours = await solveCover(model, {
      ...host,
      seed: 1,
      until: began + LIMIT,
      solver,
      aim: "prove",
    });
    const oursTook = now() - began;
    const alone = now();
    const other = await solver.solve(model, { seconds: LIMIT });
    const otherTook = now() - alone;
    if (ours.chosen === undefined || ours.cost > (other.cost ?? Number.POSITIVE_INFINITY) + 1e-9)
      throw new Error(`${what}: ${ours.cost} against ${other.cost}`);
    found.push({
      what: `${what}: ${model.costs.length} places and kinds, ${model.rows.length} samples`,
      ours: `${oursTook.toFixed(2)} s, cost ${ours.cost}, bound ${ours.bound.toFixed(2)}`,
      other: `${otherTook.toFixed(2)} s, cost ${other.cost}, bound ${other.bound.toFixed(2)}`,
      ratio: `${(otherTook / oursTook).toFixed(1)} times faster`,
      goal: "at least 5 at the same or better cost",
    });
  }
  const samples = discCover({ width: 40, depth: 30, spacing: 0.75, reach: 4 });
  const start = now();
  const sampled = await solveCover(samples, { ...host, seed: 1, until: start + LIMIT, solver, aim: "prove" });
  found.push({
    what: "Open hall 40 × 30 m, reach 4 m, samples and places every 0.75 m",
    ours: `${sampled.cost} devices, ${(now() - start).toFixed(0)} s`,
    other: `bound ${sampled.bound.toFixed(2)}`,
    ratio: sampled.optimal ? "fewest possible" : "gap open",
    goal: "32 or fewer in 60 s",
  });
  const site = { ...siteOf(hall, [4]), defaults: { ...planningDefaults, spacing: 0.75 } };
  const began = now();
  const placed = await placeRoom(
    site,
    { room: "room", seconds: LIMIT, seed: 1, bound: "candidates", alternatives: 0 },
    { ...host, solver, progress: () => {} },
  );
  found.push({
    what: "Open hall 40 × 30 m, reach 4 m, 0.75 m, to the skin",
    ours: `${placed.best?.devices.length} devices, ${placed.best?.gaps.length} gaps, ${(now() - began).toFixed(0)} s`,
    other: `bound ${Math.ceil(placed.bound / roundModel(4).cost - 1e-9)} (${placed.boundHolds})`,
    ratio: placed.fewest ? "fewest possible" : "gap open",
    goal: "as few as found",
  });
  return found;
}

const lRoom: Outline = [
  [0, 0],
  [20, 0],
  [20, 8],
  [9, 8],
  [9, 15],
  [0, 15],
];
const hall: Outline = [
  [0, 0],
  [40, 0],
  [40, 30],
  [0, 30],
];

/** A round model whose reach after the planning margin is the given one. [m] */
const roundModel = (reach: number): DetectorModel => ({
  id: `round-${reach}`,
  title: `Round, ${reach} m effective`,
  mounting: { min: 2, max: 6 },
  zones: { towards: [{ height: 3, radius: reach / (1 - planningDefaults.margin.towards) }] },
  declaration: "assumed",
  declaredBy: "bench",
  cost: Math.round(10 * reach ** 1.5),
});

const siteOf = (outline: Outline, reaches: readonly number[]): Site => ({
  name: "bench",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [
    {
      id: "room",
      storey: "ground",
      number: "1",
      name: "Room",
      use: "moving",
      outline,
      holes: [],
      floor: 0,
      ceilingHeight: 3,
      demand: { catch: false, walk: true, hold: false },
      noDevices: [],
    },
  ],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: reaches.map(roundModel),
  detectors: [],
});

/** Every sample within reach of a place, without walls in between. */
function discCover(of: {
  readonly width: number;
  readonly depth: number;
  readonly spacing: number;
  readonly reach: number;
}): CoverModel {
  const points: Point[] = [];
  for (let y = of.spacing / 2; y < of.depth; y += of.spacing)
    for (let x = of.spacing / 2; x < of.width; x += of.spacing) points.push([x, y]);
  return {
    costs: points.map(() => 1),
    rows: points.map(([x, y]) =>
      points.flatMap(([a, b], index) => (Math.hypot(a - x, b - y) <= of.reach ? [index] : [])),
    ),
    conflicts: [],
    fixed: [],
  };
}

function matrixOf(
  outline: Outline,
  choice: { readonly spacing: number; readonly reaches: readonly number[] },
): CoverModel {
  const site = siteOf(outline, choice.reaches);
  const scene = sceneOf(site, { storey: "ground", doors: "closed" });
  const samples = grid(outline, choice.spacing / 2, choice.spacing);
  const columns = grid(outline, choice.spacing, choice.spacing).flatMap((at) =>
    site.models.map((model) => ({
      cost: choice.reaches.length === 1 ? 1 : model.cost,
      zone: zoneInScene(scene, { device: { model, at, height: 3, turn: 0, masks: [] }, kind: "towards" }),
    })),
  );
  return {
    costs: columns.map(({ cost }) => cost),
    rows: samples.map(([x, y]) => columns.flatMap(({ zone }, index) => (zone.has(x, y) ? [index] : []))),
    conflicts: [],
    fixed: [],
  };
}

function grid(outline: Outline, from: number, spacing: number): Point[] {
  const points: Point[] = [];
  for (let y = from; y < 15; y += spacing)
    for (let x = from; x < 20; x += spacing)
      if (placeInOutline(outline, [x, y]) === "inside") points.push([x, y]);
  return points;
}
