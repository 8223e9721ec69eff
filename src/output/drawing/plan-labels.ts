import {
  boundsOf,
  causeInWords,
  contains,
  type Obstacle,
  type Point,
  type RoomCoverage,
  regionOf,
  type Site,
} from "#engine";
import { darkPart } from "./dark-walk-marks.ts";
import { detectorMark, detectorRingRadius } from "./detector-mark.ts";
import type { Segment } from "./hatching.ts";
import { colourOf, type Variant } from "./ink.ts";
import { type Ground, type Label, type LabelLine, placesAround } from "./labels.ts";
import { broken, lengthOf } from "./lettering.ts";
import type { Box, PaperPoint } from "./mark.ts";
import { onPaper, type Projection, paperLength, ringOnPaper, ringsOfRegion } from "./projection.ts";
import { roomLabel } from "./room-labels.ts";
import { interferenceWord } from "./room-marks.ts";
import type { OnStorey } from "./storey-records.ts";

/** The lettering of a plan, what matters most first: it gets the first choice of place. */
export function planLabels(plan: {
  readonly records: OnStorey;
  readonly site: Site;
  readonly coverage: readonly RoomCoverage[];
  readonly projection: Projection;
  readonly variant: Variant;
}): readonly Label[] {
  const { records, site, coverage, projection, variant } = plan;
  const beside = (of: PaperPoint, lines: readonly LabelLine[], clear: number): readonly PaperPoint[] =>
    placesAround(of, lines, [clear, clear + 2.5, clear + 6, clear + 10, clear + 15, clear + 21]);
  const tags = records.detectors.map((detector): Label => {
    const of = onPaper(detector.at, projection);
    const lines: readonly LabelLine[] = [{ text: detector.tag, size: 2.5, weight: "semibold" }];
    return {
      lines,
      of,
      places: beside(of, lines, detectorRingRadius * detectorMark.hearingRing + 0.2),
      leaderFrom: 5.5,
    };
  });
  const tagOf = (device: string): string => site.detectors.find((one) => one.id === device)?.tag ?? device;
  const gaps = coverage
    .flatMap((one) => one.gaps)
    .filter((gap) => !gap.tolerated)
    .map((gap): Label => {
      const of = onPaper(gap.at, projection);
      const words = `${gap.area.toFixed(gap.area < 1 ? 2 : 1)} m² ${causeInWords(gap.cause, tagOf)}`;
      const lines = broken(words, 46, 2.5).map(line);
      return {
        lines,
        of,
        places: [of, ...placesAround(of, lines, [3, 6, 10, 15, 21, 28])],
        leaderFrom: 0.5,
        box: "framed",
        colour: colourOf("gap", variant),
      };
    });
  const walks = coverage
    .flatMap((one) => one.darkWalks)
    .flatMap((walk): readonly Label[] => {
      const end = darkPart(walk).at(-1);
      if (!end) return [];
      const of = onPaper(end, projection);
      const lines = [line(walk.lit ? `${walk.metres.toFixed(1)} m dark` : "not lit")];
      return [{ lines, of, places: beside(of, lines, 1.2), leaderFrom: 4 }];
    });
  const sources = records.interference.map((source): Label => {
    const of = onPaper(source.at, projection);
    const lines = [line(interferenceWord(source))];
    return { lines, of, places: beside(of, lines, 2), leaderFrom: 5 };
  });
  const rooms = records.rooms.map((room) => roomLabel(room, projection));
  const obstacles = records.obstacles.flatMap((obstacle) => obstacleLabel(obstacle, projection));
  return [...tags, ...gaps, ...rooms, ...walks, ...sources, ...obstacles];
}

/** What lettering keeps off: signs, walls, edges of obstacles and steps, the dark ways. */
export function planGround(
  records: OnStorey,
  coverage: readonly RoomCoverage[],
  at: { readonly projection: Projection; readonly window: Box },
): Ground {
  const { projection } = at;
  const ring = (points: readonly PaperPoint[]): readonly Segment[] =>
    points.map((a, i): Segment => [a, points[(i + 1) % points.length]!]);
  const around = (point: Point, radius: number): Box => {
    const [x, y] = onPaper(point, projection);
    return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
  };
  return {
    window: {
      left: at.window.left + 2,
      right: at.window.right - 2,
      top: at.window.top + 2,
      bottom: at.window.bottom - 2,
    },
    taken: [
      ...records.detectors.map((one) => around(one.at, detectorRingRadius * detectorMark.hearingRing)),
      ...records.interference.map((one) => around(one.at, 1.8)),
    ],
    lines: [
      ...records.rooms.flatMap((room) =>
        [room.outline, ...room.holes].flatMap((one) => ring(ringOnPaper(one, projection))),
      ),
      ...records.obstacles.flatMap((one) => ring(ringOnPaper(one.footprint, projection))),
      ...records.floorPieces.flatMap((one) => ring(ringOnPaper(one.footprint, projection))),
      ...records.openings.flatMap((one) => [
        [onPaper(one.from, projection), onPaper(one.to, projection)] as Segment,
      ]),
      ...coverage.flatMap((one) =>
        one.gaps.flatMap((gap) => ringsOfRegion(gap.region, projection).flatMap(ring)),
      ),
      ...coverage.flatMap((one) =>
        one.darkWalks.flatMap((walk) => {
          const points = darkPart(walk).map((point) => onPaper(point, projection));
          return points.slice(1).map((b, i): Segment => [points[i]!, b]);
        }),
      ),
    ],
  };
}

/** Name and height of an obstacle, inside it or beside it; too small to be worth a word: none. */
function obstacleLabel(obstacle: Obstacle, projection: Projection): readonly Label[] {
  const bounds = boundsOf([obstacle.footprint]);
  const width = paperLength(bounds.maxX - bounds.minX, projection);
  const height = paperLength(bounds.maxY - bounds.minY, projection);
  const name = obstacle.name.trim();
  if (Math.max(width, height) < 6 || name === "") return [];
  const level = obstacle.base >= 1.9 ? obstacle.base : obstacle.top;
  const full = `${name} ${level.toFixed(2)}`;
  const short = level.toFixed(2);
  const text =
    lengthOf(full, 2.5) + 2 <= width ? full : lengthOf(short, 2.5) + 2 <= width ? short : undefined;
  if (text === undefined || height < 4.5) return [];
  const middle: Point = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  if (!contains(regionOf(obstacle.footprint), middle)) return [];
  const of = onPaper(middle, projection);
  return [{ lines: [line(text)], of, places: [of], otherwise: "left-out" }];
}

const line = (text: string): LabelLine => ({ text, size: 2.5, weight: "regular" });
