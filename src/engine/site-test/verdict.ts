import { type Check, type Said, say, type Verdict } from "../check/index.ts";
import type { Metres } from "../quantity/index.ts";
import { namedBy } from "./choose-stations.ts";
import { momentOf } from "./site-entry.ts";
import type { Station, WalkTest } from "./station.ts";

/** What somebody found at a station. */
export interface StationReading {
  readonly id: string;
  readonly station: string;
  /** `Station.basis` of the plan that it was read against. */
  readonly basis: string;
  readonly seen: boolean;
  /** From the door along the way at "lit-within", from the detector in plan at "seen-from". [m] */
  readonly distance?: Metres;
  /** When: ISO 8601. */
  readonly recorded: string;
}

/** What is known of one station. */
export interface StationVerdict {
  readonly station: Station;
  readonly check: Check;
  /** The reading that counts. */
  readonly latest: StationReading | undefined;
  /** Earlier readings, the newest first. */
  readonly earlier: readonly StationReading[];
}

/** What is known of one room. */
export interface RoomVerdict {
  readonly room: string;
  readonly check: Check;
  readonly stations: readonly StationVerdict[];
  /** Readings of stations that the plan no longer has. */
  readonly left: readonly StationReading[];
}

/**
 * A room's walk test held against its plan.
 *
 * One failed station fails the room; a station without a reading that counts, a gap that the plan itself leaves open, or a detector that
 * no walked station tests for certain leaves it not proven.
 *
 * @param test - The planned test. @param readings - All readings of the room, in any order.
 * @returns A verdict for the room and for each station, in the order of the tour; then stations of a fuller test that were read before.
 * @source COMMON-PRACTICE
 * @example Eight stations, seven passed, one not yet walked: not proven, 7 of 8
 */
export function roomVerdict(test: WalkTest, readings: readonly StationReading[]): RoomVerdict {
  const read = new Set(readings.map((reading) => reading.station));
  const walked = [...test.stations, ...test.others.filter((station) => read.has(station.id))];
  const stations = walked.map((station) =>
    stationVerdict(
      station,
      readings.filter((reading) => reading.station === station.id),
    ),
  );
  const count = (verdict: Verdict): number =>
    stations.filter(({ check }) => check.verdict === verdict).length;
  const named = namedBy(walked.map((station) => ({ station })));
  const untested = test.left.devices.filter((id) => !named.has(id)).map((id) => test.left.tags[id] ?? id);
  const known = new Set(walked.map((station) => station.id));
  const assumptions = [
    ...(count("not-proven") > 0 ? [say`Stations not proven: ${count("not-proven")}`] : []),
    ...(test.openGaps > 0 ? [say`The plan itself leaves gaps open: ${test.openGaps}`] : []),
    ...(untested.length > 0
      ? [say`Take the full test: no station of the short one tests ${untested.join(", ")}`]
      : []),
    ...(stations.length === 0 ? [say`Nothing is seen in the plan, so there is nothing to test`] : []),
  ];
  const isProven =
    stations.length > 0 && count("not-proven") === 0 && test.openGaps === 0 && untested.length === 0;
  return {
    room: test.room,
    check: {
      verdict: count("fail") > 0 ? "fail" : isProven ? "pass" : "not-proven",
      what: say`Stations of the walk test passed`,
      actual: count("pass"),
      limit: stations.length,
      unit: "",
      source: "COMMON-PRACTICE",
      assumptions,
    },
    stations,
    left: inOrder(readings.filter((reading) => !known.has(reading.station))),
  };
}

/**
 * One station held against its plan.
 *
 * @param station - The station. @param readings - Its readings, in any order.
 * @returns The verdict of the latest reading (VE-1 to VE-3); earlier ones beside it.
 * @source COMMON-PRACTICE
 * @example Planned boundary 3.4 m, first seen at 3.6 m: pass
 */
export function stationVerdict(station: Station, readings: readonly StationReading[]): StationVerdict {
  const [latest, ...earlier] = inOrder(readings);
  return { station, check: checkOf(station, latest), latest, earlier };
}

/** Newest first; of readings of one moment the one with the later id, so that every copy of a job agrees. */
const inOrder = (readings: readonly StationReading[]): readonly StationReading[] =>
  readings.toSorted((a, b) => {
    const [first, second] = [momentOf(a.recorded), momentOf(b.recorded)];
    if (first !== second) return first < second ? 1 : -1;
    return a.id < b.id ? 1 : a.id > b.id ? -1 : 0;
  });

function checkOf(station: Station, reading: StationReading | undefined): Check {
  const { expected } = station;
  const common = { what: WHAT[station.kind], unit: "m", source: "COMMON-PRACTICE" } as const;
  const limit = "distance" in expected ? expected.distance : undefined;
  const unknown = (assumption: Said): Check => ({
    ...common,
    verdict: "not-proven",
    actual: reading?.distance,
    limit,
    assumptions: [assumption],
  });
  if (!reading) return unknown(say`Not yet tested`);
  if (reading.basis !== station.basis)
    return unknown(say`Tested before a detector was moved, turned, masked or exchanged`);
  const found = { ...common, actual: reading.distance, limit };
  switch (expected.kind) {
    case "not-seen":
      return { ...found, verdict: reading.seen ? "fail" : "pass", assumptions: [] };
    case "seen":
      return { ...found, verdict: reading.seen ? "pass" : "fail", assumptions: [] };
    case "seen-from":
    case "lit-within": {
      if (!reading.seen)
        return { ...found, verdict: "fail", assumptions: [say`Never seen on the whole way`] };
      const { distance } = reading;
      if (distance === undefined || !Number.isFinite(distance) || distance < 0)
        return unknown(say`Seen, but the distance was not noted`);
      const holds =
        expected.kind === "seen-from" ? distance >= expected.distance : distance <= expected.distance;
      return { ...found, verdict: holds ? "pass" : "fail", assumptions: [] };
    }
  }
}

/** What a station checks, in the words of the trade. */
const WHAT: Readonly<Record<Station["kind"], Said>> = {
  enter: say`Walk in the dark, coming in through the door`,
  towards: say`First seen walking towards the detector`,
  across: say`Seen walking across at the planned boundary`,
  corner: say`Seen in the far corner`,
  still: say`Seen sitting still, moving the hands only`,
  behind: say`Seen behind an obstacle`,
  "pass-by": say`Not switched on by passers-by outside the open door`,
  empty: say`Not switched on in the empty room`,
};
