import { say } from "../check/index.ts";
import { clearancesBroken, gapsOf, type PreparedRoom } from "../coverage/index.ts";
import { contains, distanceBetween, distanceToRings, type Point, poleOf } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";
import {
  type Advice,
  type AdviceCase,
  exchanged,
  least,
  ownDetectors,
  unseenIn,
  weakChecks,
} from "./advice-case.ts";

/** How far a detector is moved at most, and the steps that are tried. [m] */
const MOVES: readonly Metres[] = [0.3, 0.6, 1, 1.5];
/** Directions tried about that of the largest gap. [rad] */
const ASIDE: readonly number[] = [0, -Math.PI / 6, Math.PI / 6];
/** Detectors nearest the gap that moving is tried with. */
const MOVED = 3;

/**
 * Remedies that need a new hole in the ceiling: a detector moved towards the largest gap, or one added in it.
 *
 * @param given - What was found.
 * @returns Advice for places where a detector may hang.
 * @source REACH-PROBIT
 * @example A gap in one corner: the nearest detector 0.6 m towards it
 */
export const placeAdvice = (given: AdviceCase): readonly Advice[] => [...moved(given), ...added(given)];

function moved(given: AdviceCase): readonly Advice[] {
  const { corrected, prepared, before } = given;
  const gap = largestGap(given);
  if (!gap) return [];
  const near = ownDetectors(given)
    .filter((detector) => !detector.pinned)
    .toSorted((a, b) => distanceBetween(a.at, gap) - distanceBetween(b.at, gap))
    .slice(0, MOVED);
  return near.flatMap((detector): readonly Advice[] => {
    const angle = Math.atan2(gap[1] - detector.at[1], gap[0] - detector.at[0]);
    const tried = MOVES.flatMap((by) =>
      ASIDE.flatMap((aside) => {
        const to: Point = [
          detector.at[0] + by * Math.cos(angle + aside),
          detector.at[1] + by * Math.sin(angle + aside),
        ];
        const there = { ...detector, at: to };
        if (!mayHang(prepared, there)) return [];
        return [{ to, by, after: unseenIn(prepared, exchanged(corrected.detectors, there)) }];
      }),
    );
    const best = least(tried);
    if (!best) return [];
    return [
      {
        remedy: { kind: "move", device: detector.id, to: best.to, by: best.by },
        about: "unseen",
        before,
        after: best.after,
        evidence: weakChecks(given, detector.id),
        assumptions: [say`It reaches as far from its new place as from the old one`],
      },
    ];
  });
}

function added(given: AdviceCase): readonly Advice[] {
  const { corrected, prepared, before, question } = given;
  const gap = largestGap(given);
  const like = gap && nearest(ownDetectors(given), gap);
  if (!gap || !like) return [];
  const one: Detector = { ...like, id: `${like.id} added`, at: gap, masks: [], controls: [question.room] };
  if (!mayHang(prepared, one)) return [];
  return [
    {
      remedy: { kind: "add", like: like.id, at: gap },
      about: "unseen",
      before,
      after: unseenIn(prepared, [...corrected.detectors, one]),
      evidence: weakChecks(given, like.id),
      assumptions: [say`One of the same model, reaching as far as the one beside it was found to`],
    },
  ];
}

function largestGap({ prepared, corrected }: AdviceCase): Point | undefined {
  const gaps = gapsOf(prepared, corrected.detectors).gaps.filter((gap) => !gap.tolerated);
  const largest = gaps.toSorted((a, b) => b.area - a.area)[0];
  const piece = largest?.region[0];
  return piece && poleOf(piece).at;
}

/** Inside the room, clear of walls, sources and areas where nothing may hang. */
function mayHang(prepared: PreparedRoom, detector: Detector): boolean {
  const { room, look } = prepared;
  const rings = [room.outline, ...room.holes];
  return (
    contains([{ outline: room.outline, holes: room.holes }], detector.at) &&
    distanceToRings(detector.at, rings) >= look.site.defaults.clearances.wallLeast &&
    !room.noDevices.some((outline) => contains([{ outline, holes: [] }], detector.at)) &&
    clearancesBroken(prepared, [detector]).length === 0
  );
}

const nearest = (detectors: readonly Detector[], at: Point): Detector | undefined =>
  detectors.toSorted((a, b) => distanceBetween(a.at, at) - distanceBetween(b.at, at))[0];
