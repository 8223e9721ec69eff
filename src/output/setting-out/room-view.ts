import { type Detector, joined, type Room, revealOf, roomTitle, type Site, say } from "#engine";
import { detectorMark, detectorRingRadius } from "../drawing/detector-mark.ts";
import type { Segment } from "../drawing/hatching.ts";
import { ink, muted, paper } from "../drawing/ink.ts";
import { placedLabels, placesAround } from "../drawing/labels.ts";
import type { Box, Mark, PaperPoint } from "../drawing/mark.ts";
import { openingMarks } from "../drawing/opening-marks.ts";
import { detectorSigns } from "../drawing/plan-sheet.ts";
import { onPaper, type Projection, paperLength, ringOnPaper } from "../drawing/projection.ts";
import { luminaireMarks, obstacleMarks } from "../drawing/room-marks.ts";
import { inRooms } from "../drawing/storey-records.ts";
import type { Speak } from "../words/speak.ts";
import { millimetres } from "./device-rows.ts";
import { type Dimension, dimensionMarks } from "./dimension-lines.ts";
import { gridMarks } from "./grid-marks.ts";
import { type Measure, type WallFace, wallFaces } from "./measures.ts";

/** A detector with the measures that fix it. */
export interface MeasuredDetector {
  readonly detector: Detector;
  readonly measures: readonly Measure[];
}

/** One room as the person on the ladder needs it: walls with letters, the ceiling grid, what else is on the ceiling, detectors with two dimensions each. */
export function roomView(view: {
  readonly site: Site;
  readonly room: Room;
  readonly devices: readonly MeasuredDetector[];
  readonly letters: ReadonlyMap<number, string>;
  readonly projection: Projection;
  readonly window: Box;
  readonly speak: Speak;
  /** absent: its name stands beside it already. */
  readonly title?: "absent";
}): readonly Mark[] {
  const { site, room, devices, letters, projection, window, speak } = view;
  const records = inRooms(site, new Set([room.id]));
  const faces = wallFaces(room);
  const signs = devices.map((one) => signBox(onPaper(one.detector.at, projection)));
  const wallLines = faces.map(
    (face): Segment => [onPaper(face.from, projection), onPaper(face.to, projection)],
  );
  const reveals = records.openings.flatMap((opening) => {
    const first = site.rooms.find((one) => one.id === opening.rooms[0]);
    return first ? [boxAroundRing(ringOnPaper(revealOf(opening, first).outline, projection))] : [];
  });
  const letterGround = { taken: [...signs, ...reveals] };
  const letterMarks = [...letters].flatMap(([wall, letter]) =>
    wallLetter(faces[wall]!, { letter, projection, ground: letterGround }),
  );
  const ground = {
    window,
    taken: [...signs, ...letterGround.taken.slice(signs.length + reveals.length)],
    lines: [...wallLines],
  };
  const dimensions = devices.flatMap((one) =>
    one.measures.map(
      (measure): Dimension => ({
        from: onPaper(one.detector.at, projection),
        to: onPaper(measure.foot, projection),
        text:
          measure.kind === "tiles"
            ? speak(joined([say`tile ${measure.tiles}`, millimetres(measure.distance)], " · "))
            : millimetres(measure.distance),
      }),
    ),
  );
  const dimensioned = dimensionMarks(dimensions, ground);
  const tags = devices.map((one) => {
    const of = onPaper(one.detector.at, projection);
    const lines = [{ text: one.detector.tag, size: 3.5, weight: "semibold" }] as const;
    return { lines, of, places: placesAround(of, lines, [3.4, 5, 8, 12, 17]), leaderFrom: 6 };
  });
  return [
    ...gridMarks(room, projection),
    ...records.obstacles.flatMap((one) => obstacleMarks(one, projection)),
    ...records.luminaires.flatMap((one) => luminaireMarks(one, projection)),
    ...site.ceilingThings
      .filter((one) => one.room === room.id)
      .map(
        (one): Mark => ({
          kind: "circle",
          at: onPaper(one.at, projection),
          radius: 1.2,
          pen: { width: 0.18, colour: muted },
        }),
      ),
    ...[room.outline, ...room.holes].map(
      (ring): Mark => ({
        kind: "area",
        rings: [ringOnPaper(ring, projection)],
        fills: [],
        pen: { width: 0.5, colour: ink },
      }),
    ),
    ...records.openings.flatMap((opening) => {
      const first = site.rooms.find((one) => one.id === opening.rooms[0]);
      return first ? openingMarks(opening, first, { projection, leafInto: room.id }) : [];
    }),
    ...dimensioned,
    ...letterMarks,
    ...detectorSigns(records, site, projection),
    ...placedLabels(tags, ground),
    ...(view.title === "absent" ? [] : [title(room, window, speak)]),
  ];
}

const signBox = ([x, y]: PaperPoint): Box => {
  const radius = detectorRingRadius * detectorMark.hearingRing + 0.2;
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
};

const boxAroundRing = (ring: readonly PaperPoint[]): Box => ({
  left: Math.min(...ring.map((point) => point[0])),
  right: Math.max(...ring.map((point) => point[0])),
  top: Math.min(...ring.map((point) => point[1])),
  bottom: Math.max(...ring.map((point) => point[1])),
});

function wallLetter(
  face: WallFace,
  on: {
    readonly letter: string;
    readonly projection: Projection;
    readonly ground: { readonly taken: Box[] };
  },
): readonly Mark[] {
  const a = onPaper(face.from, on.projection);
  const b = onPaper(face.to, on.projection);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  // Outside of a counter-clockwise outline lies to the right of its edges; paper is mirrored.
  const out: PaperPoint = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
  const at = (share: number): PaperPoint => [
    a[0] + share * (b[0] - a[0]) + out[0] * 4.6,
    a[1] + share * (b[1] - a[1]) + out[1] * 4.6,
  ];
  const box = ([x, y]: PaperPoint): Box => ({ left: x - 2.4, right: x + 2.4, top: y - 2.4, bottom: y + 2.4 });
  const free = [0.5, 0.35, 0.65, 0.2, 0.8].find(
    (share) => !on.ground.taken.some((other) => meets(box(at(share)), other)),
  );
  const place = at(free ?? 0.5);
  on.ground.taken.push(box(place));
  return [
    { kind: "circle", at: place, radius: 2.2, fill: paper, pen: { width: 0.25, colour: ink } },
    {
      kind: "text",
      at: [place[0], place[1] + 0.95],
      text: on.letter,
      size: 2.5,
      anchor: "middle",
      weight: "semibold",
      colour: ink,
    },
  ];
}

const meets = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

function title(room: Room, window: Box, speak: Speak): Mark {
  return {
    kind: "text",
    at: [window.left + 2, window.top + 5],
    text: speak(say`${roomTitle(room)}, ceiling ${millimetres(room.ceilingHeight)}`),
    size: 2.5,
    anchor: "start",
    weight: "semibold",
    colour: ink,
  };
}

/** Paper that a room takes with its letters, dimensions and title. [mm] */
export function cellSize(room: Room, scale: number): readonly [number, number] {
  const xs = room.outline.map((point) => point[0]);
  const ys = room.outline.map((point) => point[1]);
  const at = { scale, origin: [0, 0] } as const;
  return [
    Math.max(58, paperLength(Math.max(...xs) - Math.min(...xs), at) + 24),
    paperLength(Math.max(...ys) - Math.min(...ys), at) + 32,
  ];
}

/** Where the drawing of a cell lies: below its title. */
export const drawingOf = (cell: Box): Box => ({ ...cell, top: cell.top + 7 });
