import { type Said, say } from "../check/index.ts";
import { bearablePeak, scaledDrivers } from "./drivers-per-breaker.ts";
import type { Load, ProtectiveDevice, WiringModel } from "./model.ts";
import {
  closingTogether,
  driversIn,
  pulses,
  summedInrush,
  switchedGroups,
  uncounted,
} from "./switched-group.ts";
import type { BreakerType } from "./tables/protection.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/**
 * Each breaker against the inrush of everything that can close together: the return of power, and the largest switched group.
 *
 * @param model - The wiring.
 * @returns One check for each device: against its curve; against declared driver numbers for just this breaker; otherwise "not-proven".
 * @source BREAKER-PULSE
 * @example No curve and no declared number: not proven, however few the drivers
 */
export function breakerChecks(model: WiringModel): readonly WiringCheck[] {
  const groups = switchedGroups(model);
  return model.devices.flatMap((device) => {
    const together = closingTogether(model, device.id);
    const own = new Set(model.circuits.filter((one) => one.device === device.id).map(({ id }) => id));
    const cases = [
      {
        inrush: say`Inrush of everything that closes together when power returns`,
        share: say`Drivers that close together when power returns, as a share of the declared number`,
        ...together,
      },
      ...groups.map(({ name, loads }) => ({
        inrush: say`Inrush of everything that closes together when ${name} switches on`,
        share: say`Drivers that close together when ${name} switches on, as a share of the declared number`,
        loads: loads.filter(({ circuit }) => own.has(circuit)),
        assumed: [],
      })),
    ].filter(({ loads }) => loads.some(pulses));
    return cases
      .map((closing) => judged(device, closing))
      .toSorted(worstFirst)
      .slice(0, 1);
  });
}

const weight = { fail: 0, "not-proven": 1, pass: 2 } as const;
const used = ({ actual, limit }: WiringCheck): number =>
  actual === undefined || limit === undefined ? Number.POSITIVE_INFINITY : actual / limit;

/** A failure before what is not proven; then whatever takes the larger share of its limit. */
const worstFirst = (a: WiringCheck, b: WiringCheck): number =>
  weight[a.verdict] - weight[b.verdict] || (used(a) === used(b) ? 0 : used(b) - used(a));

const isBreaker = (type: string): type is BreakerType => type === "B" || type === "C" || type === "D";

const CURVE = say`the curve of the breaker for short pulses`;
const SCALED = say`Scaled from another breaker by habit, which proves nothing`;

/** Why nothing can be said of a breaker and the inrush behind it. */
const whyOpen = (device: ProtectiveDevice, loads: readonly Load[]): readonly Said[] => [
  ...(device.pulseCurve === undefined
    ? [say`The curve of ${device.name} for short pulses is not on record`]
    : []),
  ...(isBreaker(device.type) && device.rating !== undefined
    ? []
    : [say`Type or rating of ${device.name} is not on record`]),
  ...summedInrush(loads).missing,
];

interface Closing {
  /** What is checked of it by the pulse, and by declared numbers of drivers. */
  readonly inrush: Said;
  readonly share: Said;
  readonly loads: readonly Load[];
  readonly assumed: readonly Said[];
}

function judged(device: ProtectiveDevice, closing: Closing): WiringCheck {
  const shared = {
    source: "BREAKER-PULSE",
    code: "breaker-trips-on-inrush",
    name: device.name,
    records: [device.id],
  } as const;
  const { loads, assumed } = closing;
  const { type, rating, pulseCurve: curve } = device;
  if (isBreaker(type) && rating !== undefined) {
    const sum = summedInrush(loads);
    const limit = bearablePeak({ type, rating, curve }, sum.width);
    if (limit !== undefined && sum.peak > 0)
      return {
        ...shared,
        verdict: withDoubts(atMost(sum.peak, limit), sum.missing),
        what: closing.inrush,
        actual: sum.peak,
        limit,
        unit: "A",
        assumptions: [say`Sum of all peaks, the most that can come`, ...assumed, ...sum.missing],
        missing: [say`number and inrush of the drivers in each luminaire`],
      };
    const breaker = `${type}${rating}`;
    const share = declaredShare(loads, { type, rating });
    if (share !== undefined)
      return {
        ...shared,
        verdict: withDoubts(atMost(share.scaled, 1), [...(share.exact ? [] : [SCALED]), ...uncounted(loads)]),
        what: closing.share,
        actual: 100 * share.scaled,
        limit: 100,
        unit: "%",
        source: share.exact ? "BREAKER-PULSE" : "CUSTOMARY-SCALING",
        assumptions: [
          ...(share.exact ? [] : [SCALED]),
          say`The driver's maker assumes a certain impedance; near the board fewer are allowed`,
          ...assumed,
          ...uncounted(loads),
        ],
        missing: [
          ...(share.exact
            ? []
            : [CURVE, say`the number of drivers that their maker declares for a ${breaker}`]),
          ...(uncounted(loads).length > 0 ? [say`the number of drivers in each luminaire`] : []),
        ],
      };
  }
  return {
    ...shared,
    verdict: "not-proven",
    what: closing.inrush,
    actual: undefined,
    limit: undefined,
    unit: "A",
    assumptions: [...whyOpen(device, loads), ...assumed],
    missing: [
      ...(isBreaker(type) && rating !== undefined ? [] : [say`type and rating of the protective device`]),
      ...(curve === undefined ? [CURVE] : []),
      ...(loads.some((load) => load.kind !== "resistive" && !load.inrush)
        ? [say`number and inrush of the drivers in each luminaire`]
        : []),
    ],
  };
}

function declaredShare(
  loads: readonly Load[],
  breaker: { readonly type: BreakerType; readonly rating: number },
): { readonly scaled: number; readonly exact: boolean } | undefined {
  let scaled = 0;
  let exact = true;
  for (const load of loads.filter(({ kind }) => kind !== "resistive")) {
    const same = load.driversPerBreaker?.find(
      ({ type, rating }) => type === breaker.type && rating === breaker.rating,
    );
    const other = load.driversPerBreaker?.[0];
    const most = same?.count ?? (other ? scaledDrivers(other, breaker) : undefined);
    if (most === undefined) return undefined;
    exact &&= same !== undefined;
    scaled += driversIn(load) / most;
  }
  return { scaled, exact };
}
