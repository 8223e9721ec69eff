import { type LensMask, lostFrom } from "../detector/index.ts";
import type { Metres, SquareMetres } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import { gapsOf } from "./room-coverage.ts";

/** What masks of one detector take from its room besides what they are meant for. */
export interface MaskLoss {
  /** Floor on which nobody walking is seen any more. [m²] */
  readonly walk: SquareMetres;
  /** Of places where somebody sits or stands. [m²] */
  readonly hold: SquareMetres;
  /** Ids of places that were held and are not any more, wholly or in part. */
  readonly places: readonly string[];
  /** Distance in plan from which one who walks is out of sight within the masks' sectors; undefined without masks. [m] */
  readonly from: Metres | undefined;
}

/**
 * Collateral loss of masks: coverage of the room with them against coverage without.
 *
 * @param prepared - The room. @param question.detectors - All detectors that may matter. @param question.device - Id of the masked one.
 * @param question.masks - Its masks.
 * @returns Areas lost [m²], places, and the nearest distance lost, (h − z) tan θ_lo. [m]
 * @source MASK-GEOMETRY
 * @example No masks: nothing lost
 */
export function maskLoss(
  prepared: PreparedRoom,
  question: {
    readonly detectors: readonly Detector[];
    readonly device: string;
    readonly masks: readonly LensMask[];
  },
): MaskLoss {
  const { detectors, device, masks } = question;
  const withMasks = (own: readonly LensMask[]): readonly Detector[] =>
    detectors.map((one) => (one.id === device ? { ...one, masks: own } : one));
  const [before, after] = [gapsOf(prepared, withMasks([])), gapsOf(prepared, withMasks(masks))];
  const unheld = (gaps: typeof before.gaps): ReadonlyMap<string, SquareMetres> => {
    const areas = new Map<string, SquareMetres>();
    for (const { dwellPlace, area } of gaps)
      if (dwellPlace !== undefined) areas.set(dwellPlace, (areas.get(dwellPlace) ?? 0) + area);
    return areas;
  };
  const [missedBefore, missedAfter] = [unheld(before.gaps), unheld(after.gaps)];
  const lens = detectors.find(({ id }) => id === device)?.height;
  const seen = prepared.look.site.defaults.sightHeights.walking;
  const nearest = Math.min(...masks.map(({ inner }) => inner));
  return {
    walk: Math.max(0, before.covered.walk - after.covered.walk),
    hold: Math.max(0, before.covered.hold - after.covered.hold),
    places: [...missedAfter].flatMap(([id, area]) =>
      area > (missedBefore.get(id) ?? 0) + LEAST ? [id] : [],
    ),
    from: masks.length === 0 || lens === undefined ? undefined : lostFrom(nearest, { lens, seen }),
  };
}

/** Less of a place than this is rounding. [m²] */
const LEAST: SquareMetres = 1e-4;
