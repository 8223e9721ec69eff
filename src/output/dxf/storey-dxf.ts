import { DxfWriter, Units } from "@tarikjabiri/dxf";
import {
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
import type { DeviceZone } from "../drawing/zone-marks.ts";
import { detectorBlocks, detectorOn } from "./detector-block.ts";
import { type DrawingPen, layers, penOn } from "./drawing-pen.ts";

/** Height of names in the drawing. [m] */
const nameHeight = 0.2;
/** Size of a switch and of a board on the plan. [m] */
const sizes = { switch: 0.06, board: 0.3 } as const;

/** What a drawing of a storey shows beside the storey itself. */
export interface DrawnBeside {
  /** What each detector sees; each kind of zone has a layer of its own. */
  readonly zones?: readonly DeviceZone[];
  /** Cables along the ceilings. */
  readonly cables?: readonly DrawnCable[];
  readonly boards?: readonly { readonly name: string; readonly storey?: string; readonly at?: Point }[];
}

/** A cable on the plan of its storey. */
export interface DrawnCable {
  readonly storey: string;
  readonly use: "supply" | "switched" | "both" | "button";
  /** Corners, both ends included. [m] */
  readonly points: readonly Point[];
}

/**
 * A storey as a drawing that others can open: model space in metres, one layer a kind of thing, wall faces interrupted at openings.
 * Each model of detector is a block, put in at the lens and turned as its notch, with the tag as its attribute.
 *
 * @param site - The job.
 * @param storey - Id of the storey.
 * @param beside - Zones, cables and boards, those of other storeys too.
 * @returns Text of a DXF file (R2007); the same storey gives the same bytes.
 */
export function storeyDxf(site: Site, storey: string, beside: DrawnBeside = {}): string {
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
  zonesOn(pen, on, beside.zones ?? []);
  for (const { use, points } of (beside.cables ?? []).filter((cable) => cable.storey === storey))
    pen.path(cableLayers[use], points);
  for (const { at } of site.switches.filter((one) => on.roomIds.has(one.room)))
    pen.circle("SWITCHES", at, sizes.switch);
  for (const board of beside.boards ?? []) if (board.storey === storey) boardOn(pen, board);
  const blocks = detectorBlocks(drawing, site, on.detectors);
  for (const detector of on.detectors) detectorOn(drawing, detector, blocks);
  return drawing.stringify();
}

const cableLayers = {
  supply: "CABLES SUPPLY",
  switched: "CABLES SWITCHED",
  both: "CABLES BOTH",
  button: "CABLES BUTTON",
} as const;

const zoneLayers = {
  seated: "DETECTOR ZONES SEATED",
  towards: "DETECTOR ZONES TOWARDS",
  across: "DETECTOR ZONES ACROSS",
  sound: "DETECTOR ZONES SOUND",
} as const;

function zonesOn(pen: DrawingPen, on: OnStorey, zones: readonly DeviceZone[]): void {
  const here = new Set(on.detectors.map(({ id }) => id));
  for (const { device, kind, region } of zones) {
    if (!here.has(device)) continue;
    for (const piece of region)
      for (const outline of [piece.outline, ...piece.holes]) pen.ring(zoneLayers[kind], outline);
  }
}

function boardOn(pen: DrawingPen, { name, at }: NonNullable<DrawnBeside["boards"]>[number]): void {
  if (at === undefined) return;
  pen.ring("DISTRIBUTION BOARDS", rectangleOf({ at, length: 2 * sizes.board, width: sizes.board, turn: 0 }));
  pen.text("DISTRIBUTION BOARDS", [at[0], at[1] - 2 * sizes.board], name, nameHeight);
}

/** Number above name, about the place of the room that is farthest from its walls. */
function namesOn(pen: DrawingPen, room: Room): void {
  const { at } = poleOf({ outline: room.outline, holes: room.holes });
  const words = [room.number, room.name].filter((word) => word !== "");
  words.forEach((word, line) => {
    const down = (line - (words.length - 1) / 2) * 1.5 * nameHeight;
    pen.text("NAMES", [at[0], at[1] - down], word, nameHeight);
  });
}

const firstRoom = (site: Site, opening: Opening): Room =>
  site.rooms.find(({ id }) => id === opening.rooms[0]) as Room;

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
