import { bearablePeak, scaledDrivers } from "./drivers-per-breaker.ts";
import type { Load, ProtectiveDevice, WiringModel } from "./model.ts";
import { closingTogether, driversIn, summedInrush, switchedGroups } from "./switched-group.ts";
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
export const breakerChecks = (model: WiringModel): readonly WiringCheck[] =>
  model.devices.flatMap((device) => {
    const together = closingTogether(model, device.id);
    const own = new Set(model.circuits.filter((one) => one.device === device.id).map(({ id }) => id));
    const cases = [
      { when: "when power returns", ...together },
      ...switchedGroups(model).map(({ name, loads }) => ({
        when: `when ${name} switches on`,
        loads: loads.filter(({ circuit }) => own.has(circuit)),
        assumed: [],
      })),
    ].filter(({ loads }) => loads.some(({ kind }) => kind === "led" || kind === "fluorescent"));
    const worst = cases.toSorted((a, b) => drivers(b.loads) - drivers(a.loads))[0];
    return worst ? [judged(device, worst)] : [];
  });

const drivers = (loads: readonly Load[]): number => loads.reduce((sum, load) => sum + driversIn(load), 0);
const isBreaker = (type: string): type is BreakerType => type === "B" || type === "C" || type === "D";

interface Closing {
  readonly when: string;
  readonly loads: readonly Load[];
  readonly assumed: readonly string[];
}

function judged(device: ProtectiveDevice, { when, loads, assumed }: Closing): WiringCheck {
  const shared = {
    source: "BREAKER-PULSE",
    code: "breaker-trips-on-inrush",
    name: device.name,
    records: [device.id],
  } as const;
  const { type, rating, pulseCurve: curve } = device;
  if (isBreaker(type) && rating !== undefined) {
    const sum = summedInrush(loads);
    const limit = bearablePeak({ type, rating, curve }, sum.width);
    if (limit !== undefined && sum.missing.length < loads.length)
      return {
        ...shared,
        verdict: withDoubts(atMost(sum.peak, limit), sum.missing),
        what: `Inrush of everything that closes together ${when}`,
        actual: sum.peak,
        limit,
        unit: "A",
        assumptions: ["Sum of all peaks, the most that can come", ...assumed, ...sum.missing],
      };
    const share = declaredShare(loads, { type, rating });
    if (share !== undefined)
      return {
        ...shared,
        verdict: atMost(share.scaled, 1) === "pass" && !share.exact ? "not-proven" : atMost(share.scaled, 1),
        what: `Drivers that close together ${when}, as a share of the declared number`,
        actual: 100 * share.scaled,
        limit: 100,
        unit: "%",
        source: share.exact ? "BREAKER-PULSE" : "CUSTOMARY-SCALING",
        assumptions: [
          ...(share.exact ? [] : ["Scaled from another breaker by habit, which proves nothing"]),
          "The driver's maker assumes a certain impedance; near the board fewer are allowed",
          ...assumed,
        ],
      };
  }
  return {
    ...shared,
    verdict: "not-proven",
    what: `Inrush of everything that closes together ${when}`,
    actual: undefined,
    limit: undefined,
    unit: "A",
    assumptions: [`The curve of ${device.name} for short pulses is not on record`, ...assumed],
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
