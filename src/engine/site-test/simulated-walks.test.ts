import { expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { drawsFrom } from "../day/chance.ts";
import { distanceBetween, distanceToSegment, type Point } from "../geometry/index.ts";
import { foundReach, observationsOf, type Station, type StationReading, walkTest } from "./index.ts";

const declared = 5;
const eye: Point = [5.2, 4.1];
const site = siteLike({
  rooms: [roomLike({ id: "hall", outline: box(0, 0, 11, 8) })],
  openings: [doorLike({ id: "door", rooms: ["hall", null], from: [4, 0], to: [5, 0], opensInto: null })],
  obstacles: [
    obstacleLike({ id: "rack", room: "hall", kind: "rack", footprint: box(7.5, 5, 0.5, 2), top: 2 }),
  ],
  models: [
    roundModel({
      zones: { towards: [{ height: 2.5, radius: declared }], across: [{ height: 2.5, radius: 7 }] },
    }),
  ],
  detectors: [detectorLike({ id: "d1", room: "hall", at: eye })],
});
const { onset } = site.defaults;
const { stations } = walkTest(site, "hall", { extent: "full" });
const walks = stations.filter((station) => station.kind === "towards" || station.kind === "corner");

const nearest = (path: readonly Point[]): number =>
  Math.min(
    ...path.map((at) => distanceBetween(at, eye)),
    ...path.slice(1).map((at, i) => distanceToSegment(eye, [path[i] as Point, at])),
  );

/** What a person notes at a station whose detector reaches so far this time: nobody is seen before an onset of walk in sight. */
function noted(station: Station, reach: number): Pick<StationReading, "seen" | "distance"> {
  if (station.kind !== "towards") return { seen: reach >= nearest(station.path) };
  const start = distanceBetween(station.path[0] as Point, eye);
  const end = distanceBetween(station.path.at(-1) as Point, eye);
  // From the planned boundary of a solid on, or from the start where nothing hides it.
  const appears =
    (station.planned as number) < declared * 0.85 - 0.03 ? Math.min(start, station.planned as number) : start;
  const distance = Math.min(reach, appears - onset);
  return distance < end ? { seen: false } : { seen: true, distance };
}

test("the full walk test of a hall has enough walks to find its detector's reach", () => {
  expect(walks.length).toBeGreaterThanOrEqual(8);
});

test("[FR-2] whole walk tests, walked station by station with a known true reach: at least 93 % of the intervals hold it", () => {
  const roll = drawsFrom(571);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll());
  const tests = 300;
  let held = 0;
  let enough = 0;
  for (let k = 0; k < tests; k++) {
    const truth = 0.35 + 0.75 * roll();
    const spread = 0.05 + 0.15 * roll();
    const readings = walks.map((station, i): StationReading => {
      const reach = declared * (truth + spread * normal());
      return {
        id: `r${i}`,
        station: station.id,
        basis: station.basis,
        recorded: "2026-03-02T09:00:00Z",
        ...noted(station, reach),
      };
    });
    const found = foundReach(observationsOf(site, stations, readings)).find((one) => one.kind === "towards");
    if (found?.enough) enough++;
    if (found && found.interval[0] <= truth && truth <= found.interval[1]) held++;
  }
  expect(enough).toBe(tests);
  expect(held / tests).toBeGreaterThanOrEqual(0.93);
});
