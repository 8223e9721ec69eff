import { coverageOf, doorStates, prepareRoom, zoneInScene } from "../coverage/index.ts";
import { dice } from "../coverage/random-storey.fixture.ts";
import type { Outline, Point } from "../geometry/index.ts";
import type { Detector, Obstacle, Site } from "../site/index.ts";
import { demandParts, sampledRows } from "./demand-rows.ts";
import { doorOf, obstacleOf, rectangle, roomOf, roundModel, siteOf } from "./rooms.fixture.ts";

/** A small room drawn by dice: a rectangle or an L, up to two racks, one door that may swing in, one round model of short reach. */
export function diceSite(seed: number): Site {
  const draw = dice(seed);
  const between = (low: number, high: number): number =>
    Math.round((low + (high - low) * draw()) * 100) / 100;
  const [width, depth] = [between(3.2, 7.5), between(2.6, 5.5)];
  const [x, y] = [between(-50, 50), between(-50, 50)];
  const [cutX, cutY] = [between(1.4, width - 1.2), between(1.2, depth - 1)];
  const corner: Outline = [
    [x, y],
    [x + width, y],
    [x + width, y + cutY],
    [x + cutX, y + cutY],
    [x + cutX, y + depth],
    [x, y + depth],
  ];
  const outline = draw() < 0.5 ? rectangle(x, y, width, depth) : corner;
  const racks = Array.from(
    { length: Math.floor(draw() * 3) },
    (_, index): Obstacle =>
      obstacleOf(
        `rack-${index}`,
        rectangle(
          x + between(0.4, width - 1.6),
          y + between(0.9, depth - 1),
          between(0.5, 1.4),
          between(0.3, 0.6),
        ),
        { top: between(1.2, 2.5) },
      ),
  );
  const inward = draw() < 0.3;
  return siteOf(roomOf(outline), {
    obstacles: racks,
    openings: [doorOf([x + 0.2, y], [x + 1.1, y], { opensInto: inward ? "room" : null })],
    models: [roundModel(between(1.9, 3.1))],
  });
}

/** Places of a square grid over a box round the room. @param spacing - Of the grid. [m] */
export function gridOver(outline: Outline, spacing: number): Point[] {
  const [xs, ys] = [outline.map((at) => at[0]), outline.map((at) => at[1])];
  const points: Point[] = [];
  for (let y = Math.min(...ys) + spacing / 3; y < Math.max(...ys); y += spacing)
    for (let x = Math.min(...xs) + spacing / 3; x < Math.max(...xs); x += spacing) points.push([x, y]);
  return points;
}

/** A detector of the site's first model. */
export const hungAt = (site: Site, at: Point, index: number): Detector => ({
  id: `try-${index}`,
  tag: `try-${index}`,
  room: "room",
  controls: ["room"],
  group: "",
  model: site.models[0]!.id,
  at,
  height: 3,
  turn: 0,
  masks: [],
  pinned: false,
});

/**
 * Every choice of `count` places is tried: one by which the coverage calculation finds no gap, or undefined.
 *
 * Samples sort out most choices: one that leaves a sample and the eight places 5 mm round it unseen has a hole larger than the skin.
 */
export function strictChoice(
  site: Site,
  { points, count }: { readonly points: readonly Point[]; readonly count: number },
) {
  const prepared = prepareRoom(site, "room");
  const states = doorStates(prepared).map(({ opening, taken }) => ({
    doors: opening?.id ?? "closed",
    taken,
  }));
  const rows = demandParts(prepared.demand, { states, defaults: site.defaults }).flatMap((part) =>
    sampledRows(part, 0.4),
  );
  if (count <= 0) return undefined;
  const seen = points.map((at) => {
    const zones = new Map<string, ReturnType<typeof zoneInScene>>();
    const words = new Int32Array(Math.ceil(rows.length / 32));
    rows.forEach((row, index) => {
      let zone = zones.get(row.doors);
      if (zone === undefined) {
        const scene = row.doors === "closed" ? prepared.closed() : prepared.withOpen(row.doors);
        zone = zoneInScene(scene, {
          device: { model: site.models[0]!, at, height: 3, turn: 0, masks: [] },
          kind: row.kind === "walk" ? "towards" : "seated",
          sightHeight: row.sightHeight,
        });
        zones.set(row.doors, zone);
      }
      const [x, y] = row.at;
      const around = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => (k * Math.PI) / 4);
      if (zone.has(x, y) || around.some((a) => zone.has(x + 0.005 * Math.cos(a), y + 0.005 * Math.sin(a))))
        words[index >> 5]! |= 1 << (index & 31);
    });
    return words;
  });
  const all = new Int32Array(Math.ceil(rows.length / 32));
  rows.forEach((_, index) => {
    all[index >> 5]! |= 1 << (index & 31);
  });
  const holds = (chosen: readonly number[]): boolean =>
    coverageOf(
      prepared,
      chosen.map((index) => hungAt(site, points[index]!, index)),
    ).gaps.length === 0;
  const extend = (chosen: readonly number[], sofar: Int32Array): readonly number[] | undefined => {
    if (chosen.length === count)
      return sofar.every((word, at) => word === all[at]) && holds(chosen) ? chosen : undefined;
    for (let next = (chosen.at(-1) ?? -1) + 1; next < points.length; next++) {
      const found = extend(
        [...chosen, next],
        sofar.map((word, at) => word | seen[next]![at]!),
      );
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return extend([], new Int32Array(all.length))?.map((index) => points[index]!);
}
