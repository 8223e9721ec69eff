import type { Obstacle, Point, Room } from "#engine";
import type { AddKind } from "../kinds.ts";
import { type Along, along } from "./along.ts";
import { type Added, collected, type Ground, roomOf, type Span } from "./ground.ts";

/** Sizes of what stands in rows, as one usually meets them. Common practice, no source. [m] */
const usual = {
  partition: { thick: 0.08, top: 1.6, topSanitary: 2 },
  glass: { thick: 0.02, top: 2 },
  rack: { depth: 0.6, top: 2 },
  locker: { depth: 0.5, top: 1.8, aisle: 0.8, benchDepth: 0.35, benchTop: 0.45, place: 1 },
  bench: { depth: 0.4, top: 0.45, place: 0.8 },
  cubicle: { width: 0.95, depth: 1.5, panel: 0.03, strip: 0.25, base: 0.15, top: 2 },
  shower: { width: 0.95, depth: 0.95, panel: 0.03, strip: 0.25, base: 0.15, top: 2 },
  duct: { width: 0.4, high: 0.4 },
  beam: { width: 0.3, high: 0.3 },
  luminaire: { length: 1.2, width: 0.1, spacing: 2.4 },
  flight: { width: 1.2, rise: 0.17, going: 0.28 },
} as const;

/** The kinds that are drawn as a line. */
export type RowKind = Exclude<
  { [Kind in AddKind]: typeof import("../kinds.ts").addKinds[Kind] extends "line" ? Kind : never }[AddKind],
  "wall"
>;

/** A row of things between the two ends of a line. Undefined outside rooms. */
export function row(what: RowKind, ground: Ground, span: Span): Added | undefined {
  const room = roomOf(ground, span);
  if (!room) return undefined;
  const { put, added } = collected(ground);
  const line = (depth: number, least: number): Along => along(span, { room, depth, least });
  const stand = (kind: Obstacle["kind"], footprint: Point[], heights: { base?: number; top: number }): void =>
    put("obstacles", {
      room: room.id,
      kind,
      name: "",
      footprint,
      base: heights.base ?? 0,
      top: Math.min(heights.top, room.ceilingHeight),
      seeThrough: false,
    });
  switch (what) {
    case "partition": {
      const { thick, top, topSanitary } = usual.partition;
      const own = line(thick, 0.5);
      const high = room.use === "sanitary" || room.use === "changing" ? topSanitary : top;
      stand("partition", own.box(0, 0, own.length, thick), { top: high });
      return added();
    }
    case "glassScreen": {
      const own = line(usual.glass.thick, 0.5);
      stand("glass", own.box(0, 0, own.length, usual.glass.thick), { top: usual.glass.top });
      return added();
    }
    case "rackRow": {
      const own = line(usual.rack.depth, 0.8);
      stand("rack", own.box(0, 0, own.length, usual.rack.depth), { top: usual.rack.top });
      return added();
    }
    case "lockers": {
      const { depth, top, aisle, benchDepth, benchTop, place } = usual.locker;
      const own = line(depth + aisle + benchDepth, 0.6);
      stand("furniture", own.box(0, 0, own.length, depth), { top });
      const front = depth + aisle;
      stand("furniture", own.box(0, front, own.length, front + benchDepth), { top: benchTop });
      seats(own, { room, put, kind: "bench", across: front + benchDepth / 2, apart: place });
      return added();
    }
    case "benches": {
      const { depth, top, place } = usual.bench;
      const own = line(depth, 0.6);
      stand("furniture", own.box(0, 0, own.length, depth), { top });
      seats(own, { room, put, kind: "bench", across: depth / 2, apart: place });
      return added();
    }
    case "cubicles":
    case "showers": {
      const size = what === "cubicles" ? usual.cubicle : usual.shower;
      const own = line(size.depth, size.width);
      const count = Math.max(1, Math.floor((own.length + 0.01) / size.width));
      stand("cubicle", own.ring(cubicleRing(count, size)), { base: size.base, top: size.top });
      for (let bay = 0; bay < count; bay++)
        put("dwellPlaces", {
          room: room.id,
          kind: what === "cubicles" ? "wc" : "shower",
          at: own.at((bay + 0.5) * size.width + size.panel / 2, what === "cubicles" ? 0.5 : size.depth / 2),
          radius: 0.3,
        });
      return added();
    }
    case "duct":
    case "beam": {
      const { width, high } = usual[what];
      const own = line(width, 0.5);
      const top = room.ceilingHeight;
      stand(what, own.box(0, 0, own.length, width), { base: Math.max(0, top - high), top });
      return added();
    }
    case "luminaireRow": {
      const { length, width, spacing } = usual.luminaire;
      const own = line(0, length);
      const count = Math.max(1, Math.round(own.length / spacing));
      for (let index = 0; index < count; index++)
        put("luminaires", {
          room: room.id,
          name: "",
          at: own.at(((index + 0.5) * own.length) / count, 0),
          height: room.ceilingHeight,
          mounting: "surface",
          hot: false,
          length,
          width,
          turn: own.turn,
        });
      return added();
    }
    case "flight": {
      const { width, rise, going } = usual.flight;
      const own = line(width, going);
      const steps = Math.max(1, Math.round(own.length / going));
      put("floorPieces", {
        room: room.id,
        kind: "flight",
        footprint: own.box(0, 0, own.length, width),
        from: own.at(0, width / 2),
        to: own.at(own.length, width / 2),
        low: 0,
        high: Math.round((steps + 1) * rise * 100) / 100,
      });
      return added();
    }
  }
}

/** Places where one sits, evenly along a row, one for each started length. */
function seats(
  own: Along,
  of: {
    readonly room: Room;
    readonly put: ReturnType<typeof collected>["put"];
    readonly kind: "bench";
    readonly across: number;
    readonly apart: number;
  },
): void {
  const count = Math.max(1, Math.round(own.length / of.apart));
  for (let index = 0; index < count; index++)
    of.put("dwellPlaces", {
      room: of.room.id,
      kind: of.kind,
      at: own.at(((index + 0.5) * own.length) / count, of.across),
      radius: 0.3,
    });
}

/** Panels of a row of bays: a rear panel, dividing panels, and beside each door a strip of front. [m] */
function cubicleRing(
  count: number,
  size: { readonly width: number; readonly depth: number; readonly panel: number; readonly strip: number },
): Point[] {
  const { width, depth, panel, strip } = size;
  const ring: Point[] = [
    [0, 0],
    [count * width + panel, 0],
  ];
  for (let index = count; index >= 0; index--) {
    const u = index * width;
    ring.push([u + panel, depth]);
    if (index === 0) ring.push([u, depth]);
    else
      ring.push(
        [u - strip, depth],
        [u - strip, depth - panel],
        [u, depth - panel],
        [u, panel],
        [u - width + panel, panel],
      );
  }
  return ring;
}
