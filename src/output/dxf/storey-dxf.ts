import { DxfWriter, LWPolylineFlags, point3d, TextHorizontalAlignment, Units } from "@tarikjabiri/dxf";
import {
  degreesOf,
  type Opening,
  type Outline,
  type Point,
  poleOf,
  type Reveal,
  type Room,
  revealOf,
  type Site,
} from "#engine";
import { type OnStorey, onStorey } from "../drawing/storey-records.ts";

/** Layers of the drawing, with their colour in the index of the format: 7 is the ink of the paper. */
const layers = {
  WALLS: 7,
  DOORS: 4,
  WINDOWS: 4,
  NAMES: 7,
  FURNITURE: 8,
  STAIRS: 8,
  LUMINAIRES: 2,
  DETECTORS: 5,
  "DETECTOR TAGS": 5,
} as const;

type Layer = keyof typeof layers;

/** Height of names and tags in the drawing. [m] */
const letters = { name: 0.2, tag: 0.15 } as const;
/** Radius of a detector's ring in the drawing. [m] */
const ring = 0.15;

/**
 * A storey as a drawing that others can open: model space in metres, one layer a kind of thing, wall faces interrupted at openings.
 *
 * @param site - The job.
 * @param storey - Id of the storey.
 * @returns Text of a DXF file (R2007); the same storey gives the same bytes.
 */
export function storeyDxf(site: Site, storey: string): string {
  const drawing = new DxfWriter();
  drawing.setUnits(Units.Meters);
  drawing.setVariable("$LASTSAVEDBY", { 1: "Roomwake" });
  for (const [name, colour] of Object.entries(layers)) drawing.addLayer(name, colour, "Continuous");
  const pen = penOn(drawing);
  const on = onStorey(site, storey);
  const reveals = new Map(
    on.openings.map((opening) => [opening.id, revealOf(opening, firstRoom(site, opening))]),
  );
  for (const room of on.rooms) {
    for (const outline of [room.outline, ...room.holes])
      for (const [from, to] of facesOf(outline, room, { on, reveals })) pen.line("WALLS", from, to);
    namesOn(pen, room);
  }
  for (const opening of on.openings) openingOn(pen, opening, reveals.get(opening.id));
  for (const { footprint } of on.obstacles) pen.ring("FURNITURE", footprint);
  for (const { footprint } of on.floorPieces) pen.ring("STAIRS", footprint);
  for (const luminaire of on.luminaires) pen.ring("LUMINAIRES", rectangleOf(luminaire));
  for (const { at, tag } of on.detectors) {
    pen.circle("DETECTORS", at, ring);
    pen.text("DETECTOR TAGS", [at[0] + 2.5 * ring, at[1] - ring], tag, letters.tag, "left");
  }
  return drawing.stringify();
}

/** Number above name, about the place of the room that is farthest from its walls. */
function namesOn(pen: DrawingPen, room: Room): void {
  const { at } = poleOf({ outline: room.outline, holes: room.holes });
  const words = [room.number, room.name].filter((word) => word !== "");
  words.forEach((word, line) => {
    const down = (line - (words.length - 1) / 2) * 1.5 * letters.name;
    pen.text("NAMES", [at[0], at[1] - down], word, letters.name);
  });
}

const firstRoom = (site: Site, opening: Opening): Room =>
  site.rooms.find(({ id }) => id === opening.rooms[0]) as Room;

interface DrawingPen {
  readonly line: (layer: Layer, from: Point, to: Point) => void;
  readonly ring: (layer: Layer, outline: Outline) => void;
  readonly circle: (layer: Layer, at: Point, radius: number) => void;
  readonly arc: (
    layer: Layer,
    at: Point,
    arc: { readonly radius: number; readonly from: number; readonly to: number },
  ) => void;
  readonly text: (layer: Layer, at: Point, words: string, height: number, align?: "left") => void;
}

function penOn(drawing: DxfWriter): DrawingPen {
  const place = ([x, y]: Point) => point3d(settled(x), settled(y));
  return {
    line: (layerName, from, to) => drawing.addLine(place(from), place(to), { layerName }),
    ring: (layerName, outline) =>
      drawing.addLWPolyline(
        outline.map((point) => ({ point: { x: settled(point[0]), y: settled(point[1]) } })),
        { flags: LWPolylineFlags.Closed, layerName },
      ),
    circle: (layerName, at, radius) => drawing.addCircle(place(at), settled(radius), { layerName }),
    arc: (layerName, at, { radius, from, to }) =>
      drawing.addArc(place(at), settled(radius), settled(degreesOf(from)), settled(degreesOf(to)), {
        layerName,
      }),
    text: (layerName, at, words, height, align) =>
      drawing.addText(place(at), height, words, {
        layerName,
        ...(align === "left"
          ? {}
          : { secondAlignmentPoint: place(at), horizontalAlignment: TextHorizontalAlignment.Center }),
      }),
  };
}

/** Tenths of a millimetre, and of a millidegree: far below what a drawing shows. */
const settled = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;

/** A face lies on a wall when it is nearer than this. [m] */
const onFace = 0.002;

/** The faces of a room's walls, interrupted where openings are. */
function facesOf(
  outline: Outline,
  room: Room,
  of: { readonly on: OnStorey; readonly reveals: ReadonlyMap<string, Reveal> },
): readonly (readonly [Point, Point])[] {
  const gaps = of.on.openings.flatMap((opening): readonly (readonly [Point, Point])[] => {
    const reveal = of.reveals.get(opening.id);
    if (!reveal) return [];
    if (opening.rooms[0] === room.id) return [reveal.near];
    return opening.rooms[1] === room.id ? [reveal.far] : [];
  });
  return outline.flatMap((a, index) => {
    const b = outline[(index + 1) % outline.length] as Point;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) return [];
    const way: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const along = (point: Point): number => (point[0] - a[0]) * way[0] + (point[1] - a[1]) * way[1];
    const off = (point: Point): number => Math.abs((point[1] - a[1]) * way[0] - (point[0] - a[0]) * way[1]);
    const cuts = gaps
      .filter((gap) => gap.every((end) => off(end) < onFace))
      .map((gap) => gap.map(along).sort((p, q) => p - q) as [number, number])
      .filter(([from, to]) => to > 0 && from < length)
      .sort((p, q) => p[0] - q[0]);
    const at = (u: number): Point => [a[0] + way[0] * u, a[1] + way[1] * u];
    const faces: (readonly [Point, Point])[] = [];
    let reached = 0;
    for (const [from, to] of cuts) {
      if (from > reached + onFace) faces.push([at(reached), at(from)]);
      reached = Math.max(reached, to);
    }
    if (length > reached + onFace) faces.push([at(reached), b]);
    return faces;
  });
}

function openingOn(pen: DrawingPen, opening: Opening, reveal: Reveal | undefined): void {
  if (!reveal) return;
  const [nearFrom, nearTo] = reveal.near;
  const [farFrom, farTo] = reveal.far;
  pen.line("WALLS", nearFrom, farFrom);
  pen.line("WALLS", nearTo, farTo);
  if (opening.kind === "window" || opening.kind === "glazing") {
    pen.line("WINDOWS", nearFrom, nearTo);
    pen.line("WINDOWS", farFrom, farTo);
    return;
  }
  if (opening.kind === "door") leafOn(pen, opening, reveal);
}

/** The leaf stands open, with its swing. */
function leafOn(pen: DrawingPen, opening: Opening, reveal: Reveal): void {
  const intoFirst = opening.opensInto === opening.rooms[0];
  const face = intoFirst ? reveal.near : reveal.far;
  const [hinge, latch] = opening.hinge === "from" ? face : [face[1], face[0]];
  const closed = Math.atan2(latch[1] - hinge[1], latch[0] - hinge[0]);
  const into: Point = intoFirst ? [-reveal.through[0], -reveal.through[1]] : reveal.through;
  const sense = Math.sign(Math.cos(closed) * into[1] - Math.sin(closed) * into[0]) || 1;
  const open = closed + sense * opening.angle;
  const radius = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
  pen.line("DOORS", hinge, [hinge[0] + radius * Math.cos(open), hinge[1] + radius * Math.sin(open)]);
  const [from, to] = sense > 0 ? [closed, open] : [open, closed];
  pen.arc("DOORS", hinge, { radius, from, to });
}

function rectangleOf(of: {
  readonly at: Point;
  readonly length: number;
  readonly width: number;
  readonly turn: number;
}): Outline {
  const [c, s] = [Math.cos(of.turn), Math.sin(of.turn)];
  const [a, b] = [of.length / 2, of.width / 2];
  return (
    [
      [-a, -b],
      [a, -b],
      [a, b],
      [-a, b],
    ] as const
  ).map(([u, v]): Point => [of.at[0] + u * c - v * s, of.at[1] + u * s + v * c]);
}
