import type { Seconds } from "../quantity/index.ts";
import type { StationCandidate } from "./candidate.ts";
import type { Station, StationKind } from "./station.ts";

/** Order in which kinds are served while the allowance lasts. */
const KINDS: readonly StationKind[] = [
  "enter",
  "still",
  "towards",
  "corner",
  "behind",
  "across",
  "pass-by",
  "empty",
];

/** What a short test may take. */
export interface Allowance {
  readonly stations: number;
  /** Attended, ways included. [s] */
  readonly seconds: Seconds;
}

/** What a room of ordinary size may take (WT-9). @source COMMON-PRACTICE */
export const ORDINARY: Allowance & { readonly area: number; readonly devices: number } = {
  stations: 8,
  seconds: 240,
  area: 60,
  devices: 6,
};

/**
 * What a short walk test of a room may take: 8 stations and 4 minutes for every 60 m² or 6 devices begun.
 *
 * @param room.area - Floor to walk on. [m²] @param room.devices - Devices that switch its light.
 * @returns Stations, and attended time. [s]
 * @source COMMON-PRACTICE
 * @example 60 m² and 6 devices: 8 stations, 240 s; 61 m²: 16 stations, 480 s
 */
export function allowanceOf(room: { readonly area: number; readonly devices: number }): Allowance {
  const times = Math.max(1, Math.ceil(room.area / ORDINARY.area), Math.ceil(room.devices / ORDINARY.devices));
  return { stations: times * ORDINARY.stations, seconds: times * ORDINARY.seconds };
}

/**
 * The stations of a short walk test: one of each kind that exists, the one with the thinnest margin; then, among the rest, devices not yet
 * named before thin margins.
 *
 * @param candidates - All stations. @param question.allowance - How many, and how long.
 * @param question.secondsOf - Attended time of a choice with its ways. [s]
 * @returns The chosen ones; the first of each kind is left out only where the time does not allow it.
 * @source COMMON-PRACTICE
 * @example Two doors and a desk: the worse door, the desk, then the other door
 */
export function chooseStations(
  candidates: readonly StationCandidate[],
  question: {
    readonly allowance: Allowance;
    readonly secondsOf: (chosen: readonly StationCandidate[]) => Seconds;
  },
): readonly StationCandidate[] {
  const { allowance, secondsOf } = question;
  let chosen: readonly StationCandidate[] = [];
  const fits = (more: readonly StationCandidate[]): boolean =>
    more.length <= allowance.stations && secondsOf(more) <= allowance.seconds;
  for (const kind of KINDS) {
    const first = sorted(candidates.filter((one) => one.station.kind === kind))[0];
    if (first && fits([...chosen, first])) chosen = [...chosen, first];
  }
  chosen = namingMore(chosen, { candidates, fits });
  for (;;) {
    const named = namedBy(chosen);
    const rest = sorted(candidates.filter((one) => !chosen.includes(one)));
    const unnamed = rest.filter((one) => namesMore(one, named));
    const next = [...unnamed, ...rest].find((one) => fits([...chosen, one]));
    if (!next) return chosen;
    chosen = [...chosen, next];
  }
}

/** Thinnest margin first; equal ones in the order of their ids, so that the choice does not hang on the order of records. */
const sorted = (candidates: readonly StationCandidate[]): readonly StationCandidate[] =>
  candidates.toSorted(
    (a, b) => a.station.headroom - b.station.headroom || (a.station.id < b.station.id ? -1 : 1),
  );

/**
 * Devices that a choice tests for certain: where one walks towards or across, the detector that is watched; elsewhere the only one that sees the place. Of several
 * that see a place nobody can say which it was.
 *
 * @param chosen - Stations. @returns Ids.
 * @example A corner that two devices see names neither
 */
export const namedBy = (
  chosen: readonly { readonly station: Pick<Station, "expected" | "devices"> }[],
): ReadonlySet<string> =>
  new Set(
    chosen.flatMap(({ station }) =>
      station.expected.kind !== "not-seen" && station.devices.length === 1 ? station.devices : [],
    ),
  );

/** Whether a candidate names a device that a choice does not. */
const namesMore = (one: StationCandidate, named: ReadonlySet<string>): boolean =>
  [...namedBy([one])].some((device) => !named.has(device));

/** Exchanges stations for others of their kind as long as that names one more device. */
function namingMore(
  chosen: readonly StationCandidate[],
  question: {
    readonly candidates: readonly StationCandidate[];
    readonly fits: (chosen: readonly StationCandidate[]) => boolean;
  },
): readonly StationCandidate[] {
  let best = chosen;
  for (;;) {
    const named = namedBy(best);
    const exchange = sorted(question.candidates)
      .filter((one) => !best.includes(one) && namesMore(one, named))
      .flatMap((one) =>
        best.flatMap((old, i) => (old.station.kind === one.station.kind ? [best.toSpliced(i, 1, one)] : [])),
      )
      .find((more) => namedBy(more).size > named.size && question.fits(more));
    if (!exchange) return best;
    best = exchange;
  }
}
