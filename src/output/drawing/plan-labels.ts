import {
  boundsOf,
  causeInWords,
  contains,
  controlledRooms,
  type DarkWalk,
  english,
  figured,
  type Gap,
  joined,
  type Obstacle,
  type Point,
  type RoomCoverage,
  regionOf,
  type Site,
  say,
  type Words,
} from "#engine";
import type { Speak } from "../words/speak.ts";
import { darkPart, drawnWalks } from "./dark-walk-marks.ts";
import { detectorMark, detectorRingRadius } from "./detector-mark.ts";
import type { Segment } from "./hatching.ts";
import { colourOf, type Variant } from "./ink.ts";
import { type Ground, type Label, type LabelLine, placesAround } from "./labels.ts";
import { broken, lengthOf } from "./lettering.ts";
import type { Box, PaperPoint } from "./mark.ts";
import { onPaper, onPlan, type Projection, paperLength, ringOnPaper, ringsOfRegion } from "./projection.ts";
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
  readonly speak: Speak;
}): readonly Label[] {
  const { records, site, coverage, projection, variant, speak } = plan;
  const beside = (of: PaperPoint, lines: readonly LabelLine[], clear: number): readonly PaperPoint[] =>
    placesAround(of, lines, [clear, clear + 2.5, clear + 6, clear + 10, clear + 15, clear + 21]);
  const regions = new Map(records.rooms.map((room) => [room.id, regionOf(room.outline, room.holes)]));
  const inRoom =
    (room: string) =>
    (at: PaperPoint): boolean =>
      contains(regions.get(room) ?? [], onPlan(at, projection));
  const tags = records.detectors.map((detector): Label => {
    const of = onPaper(detector.at, projection);
    const lines: readonly LabelLine[] = [{ text: detector.tag, size: 2.5, weight: "semibold" }];
    return {
      lines,
      of,
      places: beside(of, lines, detectorRingRadius * detectorMark.hearingRing + 0.2),
      leaderFrom: 5.5,
      home: inRoom(detector.room),
    };
  });
  const gaps = coverage.flatMap((one) => gapLabels(one, { site, projection, variant, speak }));
  const walks = coverage
    .flatMap((one) => walksWithWords(one, site).map((walk) => ({ walk, room: one.room })))
    .flatMap(({ walk, room }): readonly Label[] => {
      const end = darkPart(walk).at(-1);
      if (!end) return [];
      const of = onPaper(end, projection);
      const lines = [
        line(speak(walk.lit ? say`${figured(`${walk.metres.toFixed(1)} m`)} dark` : say`not lit`)),
      ];
      return [{ lines, of, places: beside(of, lines, 1.2), leaderFrom: 4, home: inRoom(room) }];
    });
  const sources = records.interference.map((source): Label => {
    const of = onPaper(source.at, projection);
    const lines = [line(speak(interferenceWord(source)))];
    const own = inRoom(source.room);
    return {
      lines,
      of,
      places: beside(of, lines, 2),
      leaderFrom: 5,
      // Outside the building it is as clear as in its own room.
      home: (at) => own(at) || !records.rooms.some((room) => inRoom(room.id)(at)),
    };
  });
  const watched = new Set(site.detectors.flatMap(controlledRooms));
  const rooms = records.rooms.map((room) =>
    roomLabel(room, { projection, speak, note: watched.has(room.id) ? undefined : say`no detector` }),
  );
  const obstacles = records.obstacles.flatMap((obstacle) => obstacleLabel(obstacle, { projection, speak }));
  return [...tags, ...rooms, ...gaps, ...walks, ...sources, ...obstacles];
}

/** One label for all gaps of a room that have one cause, at the largest of them. A room without detectors says so in its name. */
function gapLabels(
  coverage: RoomCoverage,
  plan: {
    readonly site: Site;
    readonly projection: Projection;
    readonly variant: Variant;
    readonly speak: Speak;
  },
): readonly Label[] {
  const tagOf = (device: string): string =>
    plan.site.detectors.find((one) => one.id === device)?.tag ?? device;
  const byCause = new Map<string, { readonly cause: Words; readonly gaps: Gap[] }>();
  for (const gap of coverage.gaps) {
    if (gap.tolerated || gap.cause.kind === "no-device") continue;
    const cause: Words = causeInWords(gap.cause, tagOf);
    const known = byCause.get(english(cause));
    if (known) known.gaps.push(gap);
    else byCause.set(english(cause), { cause, gaps: [gap] });
  }
  return [...byCause.values()].map(({ cause, gaps }): Label => {
    const largest = gaps.reduce((best, gap) => (gap.area > best.area ? gap : best));
    const area = gaps.reduce((sum, gap) => sum + gap.area, 0);
    const size = figured(`${area.toFixed(area < 1 ? 2 : 1)} m²`);
    const of = onPaper(largest.at, plan.projection);
    const lines = broken(
      plan.speak(joined([gaps.length === 1 ? size : say`${gaps.length} gaps, ${size}`, cause], ", ")),
      46,
      2.5,
    ).map(line);
    return {
      lines,
      of,
      places: [of, ...placesAround(of, lines, [3, 6, 10, 15, 21, 28])],
      leaderFrom: 0.5,
      box: "framed",
      colour: colourOf("gap", plan.variant),
    };
  });
}

/** The worst walk of a room and all beyond the limit carry their metres; the others only their tick. */
function walksWithWords(coverage: RoomCoverage, site: Site): readonly DarkWalk[] {
  const drawn = drawnWalks(coverage);
  const worst = Math.max(0, ...drawn.map((walk) => walk.metres));
  return drawn.filter(
    (walk) => !walk.lit || walk.metres >= worst - 1e-9 || walk.metres > site.defaults.darkWalkLimit,
  );
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
    shunned: records.obstacles
      .filter((one) => one.base < 1.9)
      .map((one) => boxOfRing(ringOnPaper(one.footprint, projection))),
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
        drawnWalks(one).flatMap((walk) => {
          const points = darkPart(walk).map((point) => onPaper(point, projection));
          return points.slice(1).map((b, i): Segment => [points[i]!, b]);
        }),
      ),
    ],
  };
}

const boxOfRing = (ring: readonly PaperPoint[]): Box => ({
  left: Math.min(...ring.map((point) => point[0])),
  right: Math.max(...ring.map((point) => point[0])),
  top: Math.min(...ring.map((point) => point[1])),
  bottom: Math.max(...ring.map((point) => point[1])),
});

/** Name and height of an obstacle, inside it or beside it; too small to be worth a word: none. */
function obstacleLabel(
  obstacle: Obstacle,
  { projection, speak }: { readonly projection: Projection; readonly speak: Speak },
): readonly Label[] {
  const bounds = boundsOf([obstacle.footprint]);
  const width = paperLength(bounds.maxX - bounds.minX, projection);
  const height = paperLength(bounds.maxY - bounds.minY, projection);
  const name = obstacle.name.trim();
  if (Math.max(width, height) < 6 || name === "") return [];
  const level = obstacle.base >= 1.9 ? obstacle.base : obstacle.top;
  const short = speak(figured(level.toFixed(2)));
  const full = `${name} ${short}`;
  const text =
    lengthOf(full, 2.5) + 2 <= width ? full : lengthOf(short, 2.5) + 2 <= width ? short : undefined;
  if (text === undefined || height < 4.5) return [];
  const middle: Point = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  if (!contains(regionOf(obstacle.footprint), middle)) return [];
  const of = onPaper(middle, projection);
  return [{ lines: [line(text)], of, places: [of], otherwise: "left-out" }];
}

const line = (text: string): LabelLine => ({ text, size: 2.5, weight: "regular" });
