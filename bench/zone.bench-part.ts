import { Clipper, FillRule, type Path64, type Paths64 } from "clipper2-ts";
import * as polyclip from "polyclip-ts";
import {
  areaOf,
  convexHull,
  type DetectorModel,
  type Obstacle,
  type Outline,
  type Point,
  planningDefaults,
  type Region,
  type Room,
  type Site,
  sceneOf,
  zoneInScene,
} from "#engine";
import type { BenchRow } from "./bench.ts";

const LENS = 3;
const SIGHT = 1;
const RADIUS = 8;
const RUNS = 25;

/**
 * Zone of one detector in a room with 100 solids, against the difference of the same reach and the same shadows by two boolean libraries.
 *
 * @returns Median milliseconds of each and the ratio; throws if the areas disagree.
 */
export async function rows(): Promise<readonly BenchRow[]> {
  const { site, device } = hall();
  const scene = sceneOf(site, { storey: "s", doors: "closed" });
  const zone = (): Region => zoneInScene(scene, { device, kind: "towards" }).region();
  const reach = discOf(device.at, RADIUS * 0.85);
  const room = (site.rooms[0] as Room).outline;
  const shadows = site.obstacles.map((one) => shadowOf(one, device.at));
  const byClipper = (): Paths64 => {
    const inRoom = Clipper.intersect([path(reach)], [path(room)], FillRule.NonZero);
    return Clipper.difference(inRoom, shadows.map(path), FillRule.NonZero);
  };
  const byPolyclip = (): polyclip.Geom =>
    polyclip.difference(polyclip.intersection(rings(reach), rings(room)), ...shadows.map(rings));
  const ours = median(zone);
  const clipper = median(byClipper);
  const area = areaOf(zone());
  const clipperArea = Clipper.areaPaths(byClipper()) / 1e10;
  if (Math.abs(area - clipperArea) > 0.01) throw new Error(`Areas differ: ${area} m² and ${clipperArea} m²`);
  return [
    row("zone with 100 solids, against one clipper2-ts difference", { ours, other: clipper, goal: 3 }),
    row("zone with 100 solids, against one polyclip-ts difference", {
      ours,
      other: median(byPolyclip, 3),
      goal: 20,
    }),
  ];
}

const row = (
  what: string,
  figures: { readonly ours: number; readonly other: number; readonly goal: number },
): BenchRow => ({
  what,
  ours: `${figures.ours.toFixed(2)} ms`,
  other: `${figures.other.toFixed(2)} ms`,
  ratio: `${(figures.other / figures.ours).toFixed(1)} times faster`,
  goal: `at least ${figures.goal}`,
});

function hall(): {
  readonly site: Site;
  readonly device: {
    readonly model: DetectorModel;
    readonly at: Point;
    readonly height: number;
    readonly turn: number;
    readonly masks: readonly [];
  };
} {
  const heights = [1.4, 1.8, 2.2, 3.2];
  const obstacles = Array.from({ length: 100 }, (_, i): Obstacle => {
    const [x, y] = [0.6 + (i % 10) * 1.45, 0.6 + Math.floor(i / 10) * 1.45];
    const turn = i * 0.37;
    const corner = (dx: number, dy: number): Point => [
      x + dx * Math.cos(turn) - dy * Math.sin(turn),
      y + dx * Math.sin(turn) + dy * Math.cos(turn),
    ];
    return {
      id: `o${i}`,
      room: "r",
      kind: "rack",
      name: "",
      base: 0,
      top: heights[i % 4] as number,
      seeThrough: false,
      footprint: [corner(-0.25, -0.15), corner(0.25, -0.15), corner(0.25, 0.15), corner(-0.25, 0.15)],
    };
  });
  const model: DetectorModel = {
    id: "m",
    title: "",
    mounting: { min: 2, max: 4 },
    zones: { towards: [{ height: LENS, radius: RADIUS }] },
    declaration: "assumed",
    declaredBy: "",
    cost: 1,
  };
  const room: Room = {
    id: "r",
    storey: "s",
    number: "",
    name: "",
    use: "moving",
    outline: [
      [0, 0],
      [14.5, 0],
      [14.5, 14.5],
      [0, 14.5],
    ],
    holes: [],
    floor: 0,
    ceilingHeight: 3.5,
    demand: { catch: true, walk: true, hold: true },
    noDevices: [],
  };
  const site: Site = {
    name: "",
    defaults: planningDefaults,
    storeys: [{ id: "s", name: "", elevation: 0 }],
    rooms: [room],
    floorPieces: [],
    openings: [],
    obstacles,
    dwellPlaces: [],
    interference: [],
    switches: [],
    ceilingThings: [],
    luminaires: [],
    models: [model],
    detectors: [],
  };
  return { site, device: { model, at: [7.32, 7.28], height: LENS, turn: 0, masks: [] } };
}

/** Shadow of a convex solid: hull of its footprint and the footprint thrown out from the lens. */
function shadowOf(one: Obstacle, eye: Point): Outline {
  const factor = one.top >= LENS ? 30 : (LENS - SIGHT) / (LENS - one.top);
  const thrown = one.footprint.map(
    ([x, y]): Point => [eye[0] + factor * (x - eye[0]), eye[1] + factor * (y - eye[1])],
  );
  return convexHull([...one.footprint, ...thrown]);
}

function discOf([x, y]: Point, radius: number): Outline {
  const n = Math.ceil(Math.PI / Math.acos(1 - 0.002 / radius));
  return Array.from(
    { length: n },
    (_, i): Point => [
      x + radius * Math.cos((2 * Math.PI * i) / n),
      y + radius * Math.sin((2 * Math.PI * i) / n),
    ],
  );
}

const path = (ring: Outline): Path64 =>
  ring.map(([x, y]) => ({ x: Math.round(x * 1e5), y: Math.round(y * 1e5) }));
const rings = (ring: Outline): [number, number][][] => [ring.map(([x, y]): [number, number] => [x, y])];

function median(work: () => unknown, runs = RUNS): number {
  const times: number[] = [];
  // Compiled first: a zone is computed thousands of times in a session, so the first slow runs say little.
  for (let i = 0; i < 2 * runs; i++) work();
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[Math.floor(runs / 2)] as number;
}
