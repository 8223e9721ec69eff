import { type Check, figured, type Said, say } from "../check/index.ts";
import { gapsOf, type PreparedRoom, prepareRoom } from "../coverage/index.ts";
import { DECLARED_AT, type LensMask, warmthFactor } from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Celsius, Metres, SquareMetres } from "../quantity/index.ts";
import type { SettingGrade } from "../settings/index.ts";
import { controlledRooms, type Detector, type Site } from "../site/index.ts";
import { withFoundReach } from "./corrected-site.ts";
import type { FoundKind, FoundReach } from "./found-reach.ts";
import type { RoomVerdict } from "./verdict.ts";

/** What can be done about a detector that was found wanting. Each is data; its words are found by its kind. */
export type Remedy =
  | { readonly kind: "hang-as-planned"; readonly device: string; readonly height: Metres }
  | {
      readonly kind: "sensitivity";
      readonly device: string;
      readonly from: SettingGrade;
      readonly to: "high";
    }
  | { readonly kind: "wait-for-cooler"; readonly device: string; readonly ambient: Celsius }
  | { readonly kind: "unmask"; readonly device: string; readonly mask: number }
  | { readonly kind: "mask"; readonly device: string; readonly masks: readonly LensMask[] }
  | { readonly kind: "height"; readonly device: string; readonly height: Metres }
  | { readonly kind: "move"; readonly device: string; readonly to: Point; readonly by: Metres }
  | { readonly kind: "add"; readonly like: string; readonly at: Point };

/** One piece of advice, with what it would do to the coverage of the corrected site. */
export interface Advice {
  readonly remedy: Remedy;
  /** unseen: demand that is not seen · nuisance: passers-by or sources that are. */
  readonly about: "unseen" | "nuisance";
  /** Demand not seen beyond tolerance, before and after. [m²] */
  readonly before: SquareMetres;
  readonly after: SquareMetres;
  /** Why it is thought of, with figures. */
  readonly evidence: readonly Check[];
  /** What it rests on besides. */
  readonly assumptions: readonly Said[];
}

/** What is known beside the readings. */
export interface AdviceQuestion {
  readonly room: string;
  readonly found: readonly FoundReach[];
  readonly verdict: RoomVerdict;
  /** Air temperature on the day of the test. [°C] */
  readonly ambient?: Celsius;
  readonly sensitivity?: ReadonlyMap<string, SettingGrade>;
  /** Heights as measured, by id of the detector. [m] */
  readonly heights?: ReadonlyMap<string, Metres>;
}

/** What remedies are worked out from. */
export interface AdviceCase {
  readonly site: Site;
  /** As planned, with the air as warm as on the day of the test. */
  readonly today: Site;
  readonly corrected: Site;
  readonly prepared: PreparedRoom;
  readonly before: SquareMetres;
  readonly question: AdviceQuestion;
  /** Reach found below the planned one. */
  readonly weak: readonly FoundReach[];
}

/** Highest temperature that a room is planned for. @param site - The plan. @param room - Its id. @returns 22 °C where nobody said another. [°C] @example A drying room of 30 °C: 30 */
export const plannedWarmth = (site: Site, room: string): Celsius =>
  site.rooms.find(({ id }) => id === room)?.highestTemperature ?? DECLARED_AT;

/** A share of the declared reach at 22 °C. */
const plannedFactor = (site: Site, { kind }: FoundReach): number => 1 - site.defaults.margin[kind];

/** What the plan promises of a declared reach in its room, however warm that gets. */
const promisedFactor = (of: { readonly site: Site; readonly room: string }, one: FoundReach): number =>
  plannedFactor(of.site, one) * warmthFactor(plannedWarmth(of.site, of.room));

/**
 * Whether a reach was found below the plan: by its likeliest value, or never seen at all.
 *
 * @param of.site - The plan. @param of.room - Id of the room. @param of.ambient - Air on the day; 22 °C if nobody noted it. @param one - What was found.
 * @returns True where the device reaches less than planned at 22 °C, or less on that day than the plan promises for the room.
 * @source REACH-PROBIT
 * @source ISO-7730
 * @example Factor 0.6 where 0.85 is planned: true; 0.281 at 30 °C in a room planned for 30 °C: false, warmth leaves 0.331 of 0.85
 */
export function isWeak(
  of: { readonly site: Site; readonly room: string; readonly ambient?: Celsius | undefined },
  one: FoundReach,
): boolean {
  const likely = one.factor ?? (one.seenTo === undefined ? one.unseenFrom : undefined);
  if (likely === undefined) return false;
  const day = Math.max(1e-6, warmthFactor(of.ambient ?? DECLARED_AT));
  const least = 1 - ROUNDING;
  return likely / day < plannedFactor(of.site, one) * least || likely < promisedFactor(of, one) * least;
}

/** A share that is smaller than the planned one by less than this is the planned one. */
const ROUNDING = 1e-3;

/** Demand of a room that is not seen beyond tolerance. @param prepared - The room. @param detectors - All that may matter. @returns [m²] @example A room all of whose floor is seen: 0 */
export function unseenIn(prepared: PreparedRoom, detectors: readonly Detector[]): SquareMetres {
  return gapsOf(prepared, detectors)
    .gaps.filter((gap) => !gap.tolerated)
    .reduce((sum, gap) => sum + gap.area, 0);
}

/** A found reach held against what the plan promises of it in its room; a fail only where the whole interval lies below. @param one - What was found. @example Interval 0.5 … 0.7, planned 0.85: fail */
export const reachCheck = ({ site, question: { room } }: AdviceCase, one: FoundReach): Check => ({
  verdict: one.interval[1] < promisedFactor({ site, room }, one) ? "fail" : "not-proven",
  what: REACH_FOUND[one.kind],
  actual: one.factor ?? one.unseenFrom,
  limit: promisedFactor({ site, room }, one),
  unit: "",
  source: "REACH-PROBIT",
  assumptions: [
    say`95 % between ${figured(one.interval[0].toFixed(2))} and ${figured(one.interval[1].toFixed(2))}, from ${one.readings} readings`,
    ...(one.enough ? [] : [say`Too few readings to be sure`]),
  ],
});

const REACH_FOUND: Readonly<Record<FoundKind, Said>> = {
  seated: say`Reach found, seated, as a share of the declared one`,
  towards: say`Reach found, towards, as a share of the declared one`,
  across: say`Reach found, across, as a share of the declared one`,
};

/** The devices found weak, each with what was found of it. @example One device weak in two kinds of zones: one entry of two */
export const weakDevices = ({ weak }: AdviceCase): readonly (readonly [string, readonly FoundReach[]])[] => {
  const devices = [...new Set(weak.map(({ device }) => device))];
  return devices.map((device) => [device, weak.filter((one) => one.device === device)] as const);
};

/** Demand not seen if a device reached as planned again. @returns [m²] @param device - Its id. @example The only weak device: as planned */
export const ifAsPlanned = ({ today, question }: AdviceCase, device: string): SquareMetres => {
  const rest = question.found.filter((one) => one.device !== device);
  const mended = withFoundReach(today, { ...ofDay(question), reach: rest });
  return unseenIn(prepareRoom(mended, question.room), mended.detectors);
};

/** Air on the day of the test, where it was noted. @example Nobody noted it: nothing */
export const ofDay = ({ ambient }: AdviceQuestion): { readonly ambient?: Celsius } =>
  ambient === undefined ? {} : { ambient };

/** What was found of one weak device, as checks. @param device - Its id. @example A device that is not weak: none */
export const weakChecks = (given: AdviceCase, device: string): readonly Check[] =>
  given.weak.filter((one) => one.device === device).map((one) => reachCheck(given, one));

/** Detectors that hang in the room and switch its light, as corrected. @example A detector of the corridor: none of these */
export const ownDetectors = ({ corrected, question }: AdviceCase): readonly Detector[] =>
  corrected.detectors.filter(
    (one) => one.room === question.room && controlledRooms(one).includes(question.room),
  );

/** Detectors with one of them exchanged. @param detectors - All. @param one - The changed one, by its id. @example One moved, the others as they were */
export const exchanged = (detectors: readonly Detector[], one: Detector): readonly Detector[] =>
  detectors.map((other) => (other.id === one.id ? one : other));

/** The first, so the least, change of those that leave least unseen. @param tried - In the order of effort. @example Nothing tried: undefined */
export function least<Tried extends { readonly after: SquareMetres }>(
  tried: readonly Tried[],
): Tried | undefined {
  let best: Tried | undefined;
  for (const one of tried) if (!best || one.after < best.after - 1e-6) best = one;
  return best;
}
