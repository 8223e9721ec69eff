import { type Said, say } from "../check/index.ts";
import type { RulePack } from "./rule-pack.ts";

/** A pack with whether it is on, and why. */
export interface PackStanding {
  readonly pack: RulePack;
  readonly on: boolean;
  /** One sentence. */
  readonly why: Said;
}

/**
 * Which packs are on: what a person switched comes first, then where the job is.
 *
 * A pack written from memory, and one of a region that the job does not name, stays off until somebody switches it on:
 * a rule that is no law there would report faults that are none.
 *
 * @param packs - All packs at hand. @param job.region - Where the job is, as entered; parts between commas count each. @param job.on - Codes that a person switched on. @param job.off - Codes that a person switched off.
 * @returns One for each pack, in order.
 * @source DERIVED-HERE
 * @example Region "California": the packs of California are on
 */
export function packsInForce(
  packs: readonly RulePack[],
  job: {
    readonly region?: string | undefined;
    readonly on?: readonly string[] | undefined;
    readonly off?: readonly string[] | undefined;
  },
): readonly PackStanding[] {
  const regions = (job.region ?? "")
    .toLowerCase()
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  return packs.map((pack): PackStanding => {
    if (job.off?.includes(pack.code)) return { pack, on: false, why: say`Switched off by hand.` };
    if (job.on?.includes(pack.code)) return { pack, on: true, why: say`Switched on by hand.` };
    if (!pack.onByDefault)
      return { pack, on: false, why: pack.whyOff ?? say`Off until somebody has checked it.` };
    if (pack.regions === undefined) return { pack, on: true, why: say`A pack of one's own.` };
    const named = pack.regions.some((region) => regions.includes(region));
    if (named) return { pack, on: true, why: say`The job is in its region: ${pack.jurisdiction}.` };
    const why =
      regions.length === 0
        ? say`The job does not say where it is: switch it on where it is law.`
        : say`The job is in another region: switch it on where it is law.`;
    return { pack, on: false, why };
  });
}
