import { say } from "../check/index.ts";
import { prepareRoom } from "../coverage/index.ts";
import { warmthFactor } from "../detector/index.ts";
import type { Celsius } from "../quantity/index.ts";
import {
  type Advice,
  type AdviceCase,
  exchanged,
  ifAsPlanned,
  least,
  ownDetectors,
  plannedWarmth,
  reachCheck,
  unseenIn,
  weakChecks,
  weakDevices,
} from "./advice-case.ts";
import { HEIGHT_OFF } from "./circuit-steps.ts";
import { withFoundReach } from "./corrected-site.ts";

/**
 * Remedies that leave a detector where it is: height as planned, sensitivity, a cooler day, a mask off, another height.
 *
 * @param given - What was found.
 * @returns Advice, useful or not; `adviceFor` keeps what gains something.
 * @source REACH-PROBIT
 * @example Set to medium and found weak: sensitivity
 */
export const reachAdvice = (given: AdviceCase): readonly Advice[] => [
  ...asPlanned(given),
  ...moreSensitive(given),
  ...cooler(given, given.question.ambient),
  ...unmasked(given),
  ...otherHeight(given),
];

function asPlanned(given: AdviceCase): readonly Advice[] {
  const { site, question, before } = given;
  return site.detectors.flatMap((detector): readonly Advice[] => {
    const height = question.heights?.get(detector.id);
    if (height === undefined || Math.abs(height - detector.height) <= HEIGHT_OFF) return [];
    if (!given.weak.some(({ device }) => device === detector.id)) return [];
    return [
      {
        remedy: { kind: "hang-as-planned", device: detector.id, height: detector.height },
        about: "unseen",
        before,
        after: ifAsPlanned(given, detector.id),
        evidence: [
          {
            verdict: "fail",
            what: say`Mounting height as measured`,
            actual: height,
            limit: detector.height,
            unit: "m",
            source: "COMMON-PRACTICE",
            assumptions: [],
          },
          ...weakChecks(given, detector.id),
        ],
        assumptions: [say`At the planned height it reaches as planned`],
      },
    ];
  });
}

function moreSensitive(given: AdviceCase): readonly Advice[] {
  const { question, before } = given;
  return weakDevices(given).flatMap(([device, own]): readonly Advice[] => {
    const grade = question.sensitivity?.get(device);
    if (grade === undefined || grade === "high") return [];
    return [
      {
        remedy: { kind: "sensitivity", device, from: grade, to: "high" },
        about: "unseen",
        before,
        after: ifAsPlanned(given, device),
        evidence: own.map((one) => reachCheck(given, one)),
        assumptions: [
          say`Declared reach is measured at the highest sensitivity; raised, it reaches as planned`,
        ],
      },
    ];
  });
}

/** Only where the day's warmth alone explains what was found, and the room is not planned to be as warm. */
function cooler(given: AdviceCase, ambient: Celsius | undefined): readonly Advice[] {
  if (ambient === undefined) return [];
  const { site, question, before } = given;
  const share = warmthFactor(ambient);
  const planned = plannedWarmth(site, question.room);
  if (share >= 1 || ambient <= planned) return [];
  return weakDevices(given).flatMap(([device, own]): readonly Advice[] => {
    const fits = own.every(({ interval: [low, high] }) => low <= share && share <= high);
    if (!fits) return [];
    const cool = withFoundReach(site, { reach: question.found, ambient });
    return [
      {
        remedy: { kind: "wait-for-cooler", device, ambient },
        about: "unseen",
        before,
        after: unseenIn(prepareRoom(cool, question.room), cool.detectors),
        evidence: [
          {
            verdict: "not-proven",
            what: say`Share of the reach left at the temperature of the test`,
            actual: own[0]?.factor ?? own[0]?.unseenFrom,
            limit: share,
            unit: "",
            source: "ISO-7730",
            assumptions: [say`${ambient} °C on the day of the test`],
          },
          ...own.map((one) => reachCheck(given, one)),
        ],
        assumptions: [
          say`At ${planned} °C it reaches farther by what warmth took; where the room gets as warm as on that day, plan with that`,
        ],
      },
    ];
  });
}

function unmasked(given: AdviceCase): readonly Advice[] {
  const { corrected, prepared, before, question } = given;
  return ownDetectors(given).flatMap((detector) =>
    detector.masks.flatMap((_, mask): readonly Advice[] => {
      const without = { ...detector, masks: detector.masks.toSpliced(mask, 1) };
      const after = unseenIn(prepared, exchanged(corrected.detectors, without));
      const missed = question.verdict.stations.filter(
        ({ station, check }) => check.verdict === "fail" && station.devices.includes(detector.id),
      );
      return [
        {
          remedy: { kind: "unmask", device: detector.id, mask },
          about: "unseen",
          before,
          after,
          evidence: missed.map(({ check }) => check),
          assumptions: [say`What the mask was for is seen again: look at passers-by and sources`],
        },
      ];
    }),
  );
}

function otherHeight(given: AdviceCase): readonly Advice[] {
  const { corrected, prepared, before } = given;
  return weakDevices(given).flatMap(([device, own]): readonly Advice[] => {
    const detector = ownDetectors(given).find(({ id }) => id === device);
    const model = detector && corrected.models.find(({ id }) => id === detector.model);
    if (!detector || !model) return [];
    const highest = Math.min(model.mounting.max, prepared.room.ceilingHeight);
    const heights = [-0.6, -0.4, -0.2, 0.2, 0.4, 0.6]
      .map((more) => detector.height + more)
      .filter((height) => height >= model.mounting.min && height <= highest);
    const best = least(
      heights.map((height) => ({
        height,
        after: unseenIn(prepared, exchanged(corrected.detectors, { ...detector, height })),
      })),
    );
    if (!best) return [];
    return [
      {
        remedy: { kind: "height", device, height: best.height },
        about: "unseen",
        before,
        after: best.after,
        evidence: own.map((one) => reachCheck(given, one)),
        assumptions: [say`The factor found holds at the other height too`],
      },
    ];
  });
}
