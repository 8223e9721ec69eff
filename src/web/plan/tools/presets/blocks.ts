import type { Point, Room } from "#engine";
import { tileMiddle } from "../../snap.ts";
import { type Added, atLeast, collected, type Ground, rectangle, roomOf, type Span } from "./ground.ts";

/** Sizes of what stands in blocks, as one usually meets them. Common practice, no source. [m] */
const usual = {
  desk: { wide: 1.6, deep: 0.8, chair: 1, top: 0.75 },
  table: { ring: 0.8, seat: 0.7, off: 0.35, top: 0.75 },
  luminaire: { apart: 2.4, size: 0.6 },
} as const;

/** A block of things in the rectangle that was drawn. */
export function block(
  what: "deskGroup" | "meetingTable" | "luminaireGrid" | "obstacle" | "landing",
  ground: Ground,
  span: Span,
): Added | undefined {
  const room = roomOf(ground, span);
  if (!room) return undefined;
  const { put, added } = collected(ground);
  const furniture = (footprint: Point[], top: number): void =>
    put("obstacles", {
      room: room.id,
      kind: "furniture",
      name: "",
      footprint,
      base: 0,
      top: Math.min(top, room.ceilingHeight),
      seeThrough: false,
    });
  switch (what) {
    case "obstacle":
      furniture(rectangle(atLeast(span, 0.3)), 1.2);
      return added();
    case "landing":
      put("floorPieces", {
        room: room.id,
        kind: "landing",
        footprint: rectangle(atLeast(span, 0.8)),
        from: span.from,
        to: span.from,
        low: 0,
        high: 0,
      });
      return added();
    case "deskGroup": {
      const desks = desksIn(span);
      for (const { footprint } of desks) furniture(footprint, usual.desk.top);
      for (const { seat } of desks)
        put("dwellPlaces", {
          room: room.id,
          kind: "desk",
          at: seat,
          radius: ground.site.defaults.seatedRadius,
        });
      return added();
    }
    case "meetingTable": {
      const { ring } = usual.table;
      const whole = atLeast(span, 2 * ring + 0.7);
      const [left, bottom, right, top] = edges(whole);
      const table: Span = { from: [left + ring, bottom + ring], to: [right - ring, top - ring] };
      furniture(rectangle(table), usual.table.top);
      for (const at of seatsRound(table))
        put("dwellPlaces", { room: room.id, kind: "seat", at, radius: 0.4 });
      return added();
    }
    case "luminaireGrid": {
      for (const at of lightsIn(span, room))
        put("luminaires", {
          room: room.id,
          name: "",
          at,
          height: room.ceilingHeight,
          mounting: room.ceilingGrid ? "flush" : "surface",
          hot: false,
          length: usual.luminaire.size,
          width: usual.luminaire.size,
          turn: room.ceilingGrid?.turn ?? 0,
        });
      return added();
    }
  }
}

const edges = ({ from, to }: Span): readonly [number, number, number, number] => [
  Math.min(from[0], to[0]),
  Math.min(from[1], to[1]),
  Math.max(from[0], to[0]),
  Math.max(from[1], to[1]),
];

/** Desks back to back in pairs of rows along the longer side, each with its chair; a single row where it is too narrow for two. */
function desksIn(span: Span): readonly { readonly footprint: Point[]; readonly seat: Point }[] {
  const { wide, deep, chair } = usual.desk;
  const [left, bottom, right, top] = edges(atLeast(span, deep + chair));
  const lying = right - left >= top - bottom;
  const [long, short] = lying ? [right - left, top - bottom] : [top - bottom, right - left];
  const columns = Math.max(1, Math.floor((long + 0.01) / wide));
  const pair = 2 * (deep + chair);
  const rows = short + 0.01 >= pair ? 2 * Math.floor((short + 0.01) / pair) : 1;
  const place = (u: number, v: number): Point => (lying ? [left + u, bottom + v] : [left + v, bottom + u]);
  const desks: { footprint: Point[]; seat: Point }[] = [];
  for (let line = 0; line < rows; line++) {
    // Two rows share a front: the first has its chairs below, the second above.
    const below = line % 2 === 0;
    const base = Math.floor(line / 2) * pair;
    const from = below ? base + chair : base + chair + deep;
    const seated = below ? base + chair * 0.55 : base + pair - chair * 0.55;
    for (let column = 0; column < columns; column++) {
      const u = column * wide;
      desks.push({
        footprint: rectangle({ from: place(u, from), to: place(u + wide, from + deep) }),
        seat: roundedPoint(place(u + wide / 2, seated)),
      });
    }
  }
  return desks;
}

/** Seats round a table, evenly along each side that has room for one. */
function seatsRound(table: Span): Point[] {
  const { seat, off } = usual.table;
  const [left, bottom, right, top] = edges(table);
  const side = (length: number): number[] => {
    const count = Math.floor((length + 0.05) / seat);
    return Array.from({ length: count }, (_, index) => ((index + 0.5) * length) / count);
  };
  return [
    ...side(right - left).flatMap((u): Point[] => [
      [left + u, bottom - off],
      [left + u, top + off],
    ]),
    ...side(top - bottom).flatMap((v): Point[] => [
      [left - off, bottom + v],
      [right + off, bottom + v],
    ]),
  ].map(roundedPoint);
}

/** Luminaires at even spacing, in the middles of tiles where the ceiling has a grid, each tile once. */
function lightsIn(span: Span, room: Room): Point[] {
  const [left, bottom, right, top] = edges(atLeast(span, usual.luminaire.size));
  const columns = Math.max(1, Math.round((right - left) / usual.luminaire.apart));
  const rows = Math.max(1, Math.round((top - bottom) / usual.luminaire.apart));
  const places = new Map<string, Point>();
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const even: Point = [
        left + ((column + 0.5) * (right - left)) / columns,
        bottom + ((row + 0.5) * (top - bottom)) / rows,
      ];
      const at = roundedPoint(tileMiddle(room, even) ?? even);
      places.set(at.join(), at);
    }
  return [...places.values()];
}

const roundedPoint = ([x, y]: Point): Point => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000];
