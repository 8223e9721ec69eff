import type { Words } from "../check/index.ts";
import type { Site } from "../site/index.ts";
import { combinationsOf } from "./combinations.ts";
import { furtherTests, samplePlan } from "./sampling.ts";
import type { SamplingRule } from "./sampling-rules.ts";
import type { WorkState } from "./work-state.ts";
import { stepId } from "./work-step.ts";

/** What came of one device's tests; "open": they are not all done. */
export type DeviceResult = "pass" | "fail" | "open";

/** One group of equal devices, with those that a code has tested by now. */
export interface SampleState {
  readonly combination: Words;
  readonly devices: readonly string[];
  /** To be tested: the sample, or all of the group once too many of it failed. */
  readonly asked: readonly string[];
  /** Too many of the sample failed: the whole group is asked for. */
  readonly escalated: boolean;
  readonly tested: number;
  readonly failed: number;
}

/**
 * Where a sample stands: which devices a code has tested, by what was found so far.
 *
 * A failure that the code does not forgive asks for all devices of the combination, or of the group of seven. A device tested beyond the sample counts with it.
 *
 * @param site - Snapshot of the job. @param of.rule - Which code. @param of.resultOf - What came of a device's tests.
 * @returns Groups in the order of their names; none for a site without detectors.
 * @source IECC-C408
 * @source TITLE-24-NA7
 * @example 23 alike by Title 24, the first of a group of seven failed: all seven asked for
 */
export function sampleStates(
  site: Site,
  of: { readonly rule: SamplingRule["id"]; readonly resultOf: (device: string) => DeviceResult },
): readonly SampleState[] {
  return samplePlan(of.rule, combinationsOf(site)).groups.map(({ combination, devices, tested: sample }) => {
    const results = devices.map(of.resultOf);
    const failed = results.filter((result) => result === "fail").length;
    const tested = failed + results.filter((result) => result === "pass").length;
    const escalated = furtherTests(of.rule, { alike: devices.length, tested, failed }) > 0;
    return {
      combination,
      devices,
      asked: escalated ? devices : sample,
      escalated,
      tested,
      failed,
    };
  });
}

/**
 * What came of a device's own tests by the order of work: its functional test and its delay.
 *
 * @param state - Where the work stands. @param device - Id of the detector. @returns "fail" where one failed, "pass" where all are done.
 * @source COMMON-PRACTICE
 * @example Functional test passed, delay not yet timed: "open"
 */
export function resultOfDevice(state: WorkState, device: string): DeviceResult {
  const own = (["functional", "delay"] as const).flatMap(
    (name) => state.steps.get(stepId(name, { kind: "detector", id: device })) ?? [],
  );
  if (own.some(({ status }) => status === "failed")) return "fail";
  return own.length > 0 && own.every(({ status }) => status === "done") ? "pass" : "open";
}
