import type { Words } from "../check/index.ts";
import { type SamplingRule, samplingRules } from "./sampling-rules.ts";

/** Devices that a code takes for equal: one type in one kind of space. */
export interface Combination {
  readonly name: Words;
  /** Ids of the devices, in the order in which they are tested. */
  readonly devices: readonly string[];
}

/** Which devices a code has tested, and which only if one of these fails. */
export interface SamplePlan {
  readonly rule: SamplingRule["id"];
  readonly groups: readonly {
    readonly combination: Words;
    readonly devices: readonly string[];
    /** To be tested in any case: the first of the group. */
    readonly tested: readonly string[];
  }[];
}

/**
 * How many devices of one combination a code has tested.
 *
 * Up to 7 devices in all: every one. Above: share: n = max(1, ⌈0.1 N⌉) of each combination; groups: n = ⌈N/7⌉, one for each group of up to seven.
 *
 * @param rule - Which code. @param count.inAll - Devices of the job. @param count.alike - Devices of the combination, N.
 * @returns Devices to be tested, n ≤ N.
 * @source IECC-C408
 * @source TITLE-24-NA7
 * @example IECC, 48 alike: 5 · Title 24, 23 alike: 4
 */
export function sampleSize(
  rule: SamplingRule["id"],
  count: { readonly inAll: number; readonly alike: number },
): number {
  const { allUpTo, least } = samplingRules[rule];
  const { inAll, alike } = count;
  if (alike <= 0) return 0;
  if (inAll <= allUpTo) return alike;
  switch (least.kind) {
    case "share":
      return Math.min(alike, Math.max(1, roundedUp(least.share * alike)));
    case "groups":
      return Math.ceil(alike / least.size);
  }
}

/**
 * How many more devices must be tested after some have failed.
 *
 * share: failed / tested ≥ 0.3: all remaining of the combination. groups: the tested one of a group fails: the rest of its group.
 *
 * @param rule - Which code. @param found.alike - Devices of the combination, or for groups of the group. @param found.tested - Tested so far.
 * @param found.failed - Failed of these.
 * @returns Devices still to be tested because of failures; 0 if the code is content.
 * @source IECC-C408
 * @source TITLE-24-NA7
 * @example IECC, 48 alike, 5 tested: 2 failed: 43 more; 1 failed: none
 */
export function furtherTests(
  rule: SamplingRule["id"],
  found: { readonly alike: number; readonly tested: number; readonly failed: number },
): number {
  const { escalation } = samplingRules[rule];
  const { alike, tested, failed } = found;
  if (failed <= 0 || tested <= 0) return 0;
  const isTooMany = escalation.kind === "any-in-group" || failed >= roundedUp(escalation.share * tested);
  return isTooMany ? Math.max(0, alike - tested) : 0;
}

/**
 * Which devices a code has tested.
 *
 * @param rule - Which code. @param combinations - Devices by type and kind of space.
 * @returns Groups with the devices tested first; groups of seven keep the order given.
 * @source IECC-C408
 * @source TITLE-24-NA7
 * @example 23 alike by Title 24: groups of 7, 7, 7 and 2, the first of each tested
 */
export function samplePlan(rule: SamplingRule["id"], combinations: readonly Combination[]): SamplePlan {
  const inAll = combinations.reduce((sum, one) => sum + one.devices.length, 0);
  const { allUpTo, least } = samplingRules[rule];
  const size = least.kind === "groups" && inAll > allUpTo ? least.size : Number.POSITIVE_INFINITY;
  return {
    rule,
    groups: combinations.flatMap(({ name, devices }) =>
      inGroups(devices, size).map((group) => ({
        combination: name,
        devices: group,
        tested: group.slice(
          0,
          least.kind === "groups" && inAll > allUpTo ? 1 : sampleSize(rule, { inAll, alike: group.length }),
        ),
      })),
    ),
  };
}

function inGroups(devices: readonly string[], size: number): readonly (readonly string[])[] {
  if (devices.length <= size) return devices.length === 0 ? [] : [devices];
  return [devices.slice(0, size), ...inGroups(devices.slice(size), size)];
}

/** A share of a count rounded up; what floating point adds above a whole number is not another device. */
const roundedUp = (count: number): number => Math.ceil(count - 1e-9);
