import { type Said, say } from "../check/index.ts";
import { deviceOf, maskAgainstSource, masksAgainstFloor, seesSource } from "../coverage/index.ts";
import type { LensMask } from "../detector/index.ts";
import { outset, type Point, type Region, union } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";
import { type Advice, type AdviceCase, exchanged, ownDetectors, unseenIn } from "./advice-case.ts";
import { stripAlong } from "./strip.ts";
import type { StationVerdict } from "./verdict.ts";

/**
 * Masks against what was seen and should not be: passers-by outside an open door, and sources of false triggering in view of the empty room.
 *
 * @param given - What was found.
 * @returns One piece of advice for each failed station and detector, with the coverage that the mask costs.
 * @source MASK-GEOMETRY
 * @example A passer-by seen through a door: the sector of the path outside it
 */
export function nuisanceAdvice(given: AdviceCase): readonly Advice[] {
  const failed = given.question.verdict.stations.filter(({ check }) => check.verdict === "fail");
  return failed.flatMap((one): readonly Advice[] => {
    switch (one.station.kind) {
      case "pass-by":
        return passersBy(given, one);
      case "empty":
        return sources(given, one);
      default:
        return [];
    }
  });
}

function passersBy(given: AdviceCase, failed: StationVerdict): readonly Advice[] {
  const { station } = failed;
  const detector = ownDetectors(given).find(({ id }) => id === station.devices[0]);
  const { look, room } = given.prepared;
  const door = look.openingsOf(room.id).find(({ id }) => id === station.subject.id);
  const beyond = door?.rooms.find((one) => one !== room.id) ?? null;
  const masks =
    detector && masksAgainstFloor(look, detector, { room: beyond, region: treaded(station.path) });
  if (!detector || !masks) return [];
  return [
    mask(given, {
      detector,
      masks,
      failed,
      assumption: say`The detector that looks there is the one that saw them`,
    }),
  ];
}

function sources(given: AdviceCase, failed: StationVerdict): readonly Advice[] {
  const { prepared } = given;
  return ownDetectors(given).flatMap((detector) => {
    const model = prepared.look.modelById.get(detector.model);
    if (!model) return [];
    const device = deviceOf(detector, model);
    const masks = prepared.look
      .interferenceOf(prepared.room.id)
      .filter((source) => seesSource(prepared.open(), { device, source }) !== undefined)
      .flatMap((source) => maskAgainstSource(prepared.look, detector, source) ?? []);
    if (masks.length === 0) return [];
    return [mask(given, { detector, masks, failed, assumption: say`A source in view is what triggered it` })];
  });
}

function mask(
  given: AdviceCase,
  one: {
    readonly detector: Detector;
    readonly masks: readonly LensMask[];
    readonly failed: StationVerdict;
    readonly assumption: Said;
  },
): Advice {
  const { corrected, prepared, before } = given;
  const { detector, masks, failed, assumption } = one;
  const there = { ...detector, masks: [...detector.masks, ...masks] };
  return {
    remedy: { kind: "mask", device: detector.id, masks },
    about: "nuisance",
    before,
    after: unseenIn(prepared, exchanged(corrected.detectors, there)),
    evidence: [failed.check],
    assumptions: [assumption],
  };
}

/** Half the width of the floor that a passer-by treads on. [m] @source COMMON-PRACTICE */
const TREAD: Metres = 0.1;

/** The floor of a path. */
const treaded = (path: readonly Point[]): Region =>
  outset(union(path.slice(1).map((b, i) => stripAlong([path[i] as Point, b], TREAD / 2))), TREAD / 2);
