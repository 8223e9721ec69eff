import type { Seconds } from "../quantity/index.ts";
import { controlledRooms, type Detector, type Room, type Site } from "../site/index.ts";
import {
  countedEntries,
  delayLimit,
  momentOf,
  type ReadingLimit,
  type SetForTest,
  type SiteEntry,
  type StationReading,
  type StepSubject,
} from "../site-test/index.ts";
import type { SourceId } from "../source/index.ts";
import type { FoundInstallation } from "../wiring/index.ts";
import { isInSummer, type Occasion } from "./occasions.ts";

/** What is looked at on a visit. Permanent names; entries carry them with "care-" before. */
export type CarePointName =
  | "asked"
  | "false-on"
  | "threshold"
  | "sun"
  | "lens"
  | "mask"
  | "layout"
  | "door-walk"
  | "delay"
  | "fans-on"
  | "rcd-button"
  | "emergency"
  | "inspection";

/** What was found before, and when. */
export interface StoredReading {
  readonly value: number;
  readonly time: string;
}

/** One thing to look at, or to measure, on a visit. */
export interface CarePoint {
  /** Permanent: name, kind and id of what it is about. */
  readonly id: string;
  readonly name: CarePointName;
  /** As entries name it. */
  readonly step: `care-${CarePointName}`;
  readonly about: StepSubject;
  readonly result:
    | { readonly kind: "verdict" }
    | {
        readonly kind: "reading";
        readonly unit: "m" | "s";
        readonly limit: ReadingLimit | undefined;
        readonly stored: StoredReading | undefined;
        /** A reading this far from what was found before is pointed out. */
        readonly drift: number;
      };
  /** Attended. [s] */
  readonly seconds: Seconds;
  /** Waiting that needs nobody. [s] */
  readonly waiting: Seconds;
  readonly source: SourceId;
}

/** What is known of a job beside its site. */
export interface CareQuestion {
  /** By id of the detector. */
  readonly settings: ReadonlyMap<string, SetForTest>;
  readonly found: FoundInstallation;
  /** Entries that speak of the devices that hang there now. */
  readonly entries: readonly SiteEntry[];
  /** What was found at the stations of a room. */
  readonly readings: (room: string) => readonly StationReading[];
}

/** A walk in the dark that is this much longer than before is pointed out. [m] @source COMMON-PRACTICE */
const DOOR_DRIFT = 0.5;
/** An empty room with its fans running is watched for so long. [s] @source COMMON-PRACTICE */
const FANS_WAIT: Seconds = 300;

/**
 * What is looked at in one room on one visit (CA-3).
 *
 * Yearly: lenses, masks, layout, a walk through the door, the delay, fans running. To trim: the people asked, switching on by itself, threshold; in summer the sun and
 * the fans, and the walk on a warm day.
 *
 * @param site - Snapshot of the job. @param room - Id of a room with detectors; any other gets none. @param visit.occasion - The visit. @param visit.question - What is known beside.
 * @returns Points in the order in which one does them; the waiting ones last.
 * @source COMMON-PRACTICE
 * @example A room without masks and fans, yearly: lens, layout, door walk, delay
 */
export function carePoints(
  site: Site,
  room: string,
  visit: { readonly occasion: Occasion; readonly question: CareQuestion },
): readonly CarePoint[] {
  const record = site.rooms.find(({ id }) => id === room);
  const detectors = site.detectors.filter((one) => controlledRooms(one).includes(room));
  if (!record || detectors.length === 0) return [];
  const given = { site, room: record, detectors, question: visit.question };
  const fans = site.interference.some((one) => one.room === room && one.kind !== "sunlit-window");
  const sun = site.interference.some((one) => one.room === room && one.kind === "sunlit-window");
  const looksAtLight = detectors.some(
    ({ id }) => (visit.question.settings.get(id)?.threshold ?? "off") !== "off",
  );
  const look = (name: CarePointName, seconds: Seconds): CarePoint => pointOf(name, { given, seconds });
  const summer = isInSummer(visit.occasion);
  if (visit.occasion.kind !== "yearly")
    return [
      look("asked", 60),
      look("false-on", 30),
      ...(looksAtLight ? [look("threshold", 45)] : []),
      ...(summer && (sun || looksAtLight) ? [look("sun", 30)] : []),
      ...doorWalk(given),
      ...(summer && fans ? [waiting(look("fans-on", 30))] : []),
    ];
  return [
    look("lens", 30),
    ...(detectors.some(({ masks }) => masks.length > 0) ? [look("mask", 30)] : []),
    look("layout", 30),
    ...doorWalk(given),
    ...delay(given),
    ...(fans ? [waiting(look("fans-on", 30))] : []),
  ];
}

/**
 * What is looked at once for the whole job on a yearly check: RCD buttons, emergency luminaires, the periodic inspection where it falls due before the next check.
 *
 * @param site - Snapshot of the job. @param visit.occasion - The visit; only a yearly one has any. @param visit.found - Boards and circuits. @param visit.inspection - Day of the next periodic inspection.
 * @returns Points by circuit and luminaire.
 * @source COMMON-PRACTICE
 * @source EN-50172
 * @example A job with one circuit behind an RCD: one button
 */
export function careOfJob(
  site: Site,
  visit: {
    readonly occasion: Occasion;
    readonly found: FoundInstallation;
    readonly inspection: string | undefined;
  },
): readonly CarePoint[] {
  const { occasion, found, inspection } = visit;
  if (occasion.kind !== "yearly") return [];
  const common = { result: { kind: "verdict" }, waiting: 0 } as const;
  const named = (name: CarePointName, about: StepSubject) =>
    ({ id: `${name}:${about.kind}:${about.id}`, name, step: `care-${name}`, about }) as const;
  const isDueSoon = inspection !== undefined && inspection < nextYear(occasion.due);
  return [
    ...found.circuits
      .filter(({ rcd }) => rcd !== "no")
      .map(
        ({ id }): CarePoint => ({
          ...named("rcd-button", { kind: "circuit", id }),
          ...common,
          seconds: 30,
          source: "COMMON-PRACTICE",
        }),
      ),
    ...site.luminaires
      .filter(({ emergency }) => emergency !== undefined)
      .map(
        ({ id }): CarePoint => ({
          ...named("emergency", { kind: "luminaire", id }),
          ...common,
          seconds: 60,
          source: "EN-50172",
        }),
      ),
    ...(isDueSoon
      ? [
          {
            ...named("inspection", { kind: "job", id: "job" }),
            ...common,
            seconds: 0,
            source: "IEC-60364-6-PERIODIC" as const,
          },
        ]
      : []),
  ];
}

const nextYear = (day: string): string => `${Number(day.slice(0, 4)) + 1}${day.slice(4)}`;

interface Given {
  readonly site: Site;
  readonly room: Room;
  readonly detectors: readonly Detector[];
  readonly question: CareQuestion;
}

function pointOf(name: CarePointName, of: { readonly given: Given; readonly seconds: Seconds }): CarePoint {
  const about: StepSubject = { kind: "room", id: of.given.room.id };
  return {
    id: `${name}:room:${about.id}`,
    name,
    step: `care-${name}`,
    about,
    result: { kind: "verdict" },
    seconds: of.seconds,
    waiting: 0,
    source: "COMMON-PRACTICE",
  };
}

const waiting = (point: CarePoint): CarePoint => ({ ...point, waiting: FANS_WAIT });

/** The longest walk in the dark that was found, held against the job's limit; more where more was accepted then. */
function doorWalk(given: Given): readonly CarePoint[] {
  const { site, room, question } = given;
  const hasDoor = site.openings.some(
    ({ rooms, kind }) => rooms.includes(room.id) && (kind === "door" || kind === "passage"),
  );
  if (!hasDoor) return [];
  const latest = new Map<string, StationReading>();
  for (const reading of question
    .readings(room.id)
    .toSorted((a, b) => momentOf(a.recorded) - momentOf(b.recorded)))
    if (reading.station.startsWith("enter:")) latest.set(reading.station, reading);
  const [worst] = [...latest.values()]
    .flatMap(({ distance, recorded }) =>
      distance === undefined ? [] : [{ value: distance, time: recorded }],
    )
    .toSorted((a, b) => b.value - a.value);
  return [
    {
      ...pointOf("door-walk", { given, seconds: 45 }),
      result: {
        kind: "reading",
        unit: "m",
        limit: {
          most: Math.max(site.defaults.darkWalkLimit, worst?.value ?? 0),
          source: "COMMON-PRACTICE",
        },
        stored: worst,
        drift: DOOR_DRIFT,
      },
    },
  ];
}

/** The delay of the room's first detector, by stop-watch. */
function delay({ site, room, detectors, question }: Given): readonly CarePoint[] {
  const [detector] = detectors
    .filter((one) => one.room === room.id)
    .toSorted((a, b) => (a.tag < b.tag ? -1 : 1));
  const set = detector && question.settings.get(detector.id);
  if (!detector || set?.offDelay === undefined) return [];
  const about: StepSubject = { kind: "detector", id: detector.id };
  const stored = countedEntries(question.entries).findLast(
    (entry) =>
      entry.about.id === detector.id &&
      entry.step === "delay" &&
      entry.outcome === "read" &&
      entry.value !== undefined,
  );
  const limit = delayLimit({
    set: set.offDelay,
    ...(set.longestDelay === undefined ? {} : { longest: set.longestDelay }),
  });
  return [
    {
      ...pointOf("delay", { given: { site, room, detectors, question }, seconds: 30 }),
      id: `delay:detector:${detector.id}`,
      about,
      result: {
        kind: "reading",
        unit: "s",
        limit,
        stored: stored && { value: stored.value as number, time: stored.time },
        drift: set.offDelay - (limit.least ?? set.offDelay),
      },
      waiting: set.offDelay,
    },
  ];
}
