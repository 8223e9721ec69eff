import type { Metres, Opening, Outline, Point } from "#engine";
import type { Identities } from "../identities.ts";
import { boxOf, distanceToSegment, inRing } from "../region.ts";
import { tidy } from "../tidy.ts";
import { footprintOf } from "./footprint.ts";
import type { ElementMesh } from "./kernel.ts";
import type { ReadRoom } from "./rooms.ts";

/** A stretch where two rooms' outlines run along each other without a gap. */
export interface Contact {
  readonly first: ReadRoom;
  readonly second: ReadRoom;
  /** On the first room's outline, in its direction. */
  readonly from: Point;
  readonly to: Point;
}

/** Outlines this close touch. [m] */
const touching = 0.005;

/** Nobody walks through less. [m] */
const leastWidth = 0.3;

/** Where rooms on the same level touch along their outlines. */
export function contactsOf(rooms: readonly ReadRoom[]): readonly Contact[] {
  const contacts: Contact[] = [];
  const boxes = rooms.map((room) => boxOf(room.piece.outline));
  rooms.forEach((first, i) => {
    for (let j = i + 1; j < rooms.length; j++) {
      const second = rooms[j]!;
      const [p, q] = [boxes[i]!, boxes[j]!];
      if (
        p[0] > q[2] + touching ||
        q[0] > p[2] + touching ||
        p[1] > q[3] + touching ||
        q[1] > p[3] + touching
      )
        continue;
      const shared =
        Math.min(first.level + first.room.ceilingHeight, second.level + second.room.ceilingHeight) -
        Math.max(first.level, second.level);
      if (shared < 1.7) continue;
      contacts.push(...edgeContacts(first, second));
    }
  });
  return contacts;
}

/**
 * Passages where rooms touch and neither wall, door nor glass stands on the line between them: one open floor that was
 * split into rooms. Where the file has no walls near the line at all nothing is known, and nothing is opened.
 */
export function openContacts(
  contacts: readonly Contact[],
  walls: readonly ElementMesh[],
  context: { readonly openings: readonly Opening[]; readonly identities: Identities },
): readonly Opening[] {
  const standing = walls.flatMap((mesh) => {
    const footprint = footprintOf(mesh, 200);
    return footprint ? [footprint] : [];
  });
  const passages: Opening[] = [];
  for (const contact of contacts) {
    const { first, second } = contact;
    const level = Math.max(first.level, second.level);
    // Something below knee height or above head height does not close the way.
    const rings = standing
      .filter((each) => each.low < level + 1.5 && each.high > level + 0.5)
      .flatMap((each) => each.outlines);
    if (!rings.some((ring) => ring.some((p) => distanceToSegment(p, contact.from, contact.to) < 3))) continue;
    for (const [from, to] of uncovered(contact, rings, context.openings)) {
      const sill = level - first.level;
      const head = Math.min(first.room.ceilingHeight, second.level + second.room.ceilingHeight - first.level);
      passages.push({
        id: context.identities.take(
          "",
          `contact-${first.room.id}-${second.room.id}-${passages.length + 1}`,
          "Passage",
        ),
        rooms: [first.room.id, second.room.id],
        kind: "passage",
        from: onGrid(from),
        to: onGrid(to),
        sill: tidy(sill),
        head: tidy(head),
        thickness: 0,
        hinge: "from",
        opensInto: first.room.id,
        angle: Math.PI / 2,
        state: "open",
      });
    }
  }
  return passages;
}

/** How finely a line is looked along for what stands on it. [m] */
const step = 0.05;

const uncovered = (
  contact: Contact,
  rings: readonly Outline[],
  openings: readonly Opening[],
): readonly (readonly [Point, Point])[] => {
  const { from, to } = contact;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const count = Math.max(1, Math.round(length / step));
  const at = (k: number): Point => [
    from[0] + ((to[0] - from[0]) * k) / count,
    from[1] + ((to[1] - from[1]) * k) / count,
  ];
  const closed = (p: Point): boolean =>
    rings.some(
      (ring) =>
        inRing(p, ring) || ring.some((a, i) => distanceToSegment(p, a, ring[(i + 1) % ring.length]!) < 0.02),
    ) || openings.some((opening) => distanceToSegment(p, opening.from, opening.to) < 0.02);
  const open: [Point, Point][] = [];
  let begin = -1;
  for (let k = 0; k <= count; k++) {
    const free = k < count && !closed([(at(k)[0] + at(k + 1)[0]) / 2, (at(k)[1] + at(k + 1)[1]) / 2]);
    if (free && begin < 0) begin = k;
    if (!free && begin >= 0) {
      if (((k - begin) * length) / count >= leastWidth) open.push([at(begin), at(k)]);
      begin = -1;
    }
  }
  return open;
};

const edgeContacts = (first: ReadRoom, second: ReadRoom): Contact[] => {
  const contacts: Contact[] = [];
  for (const ring of [first.piece.outline, ...first.piece.holes]) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const u: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
      for (const other of [second.piece.outline, ...second.piece.holes]) {
        other.forEach((c, j) => {
          const d = other[(j + 1) % other.length]!;
          const span = shared(a, u, { size, c, d });
          if (!span) return;
          const [s, t] = span;
          contacts.push({
            first,
            second,
            from: [a[0] + s * u[0], a[1] + s * u[1]],
            to: [a[0] + t * u[0], a[1] + t * u[1]],
          });
        });
      }
    });
  }
  return contacts;
};

/** Stretch of the edge at a along u that the opposite edge c → d runs along, the other way round. */
const shared = (
  a: Point,
  u: Point,
  edge: { size: Metres; c: Point; d: Point },
): readonly [Metres, Metres] | undefined => {
  const { size, c, d } = edge;
  const off = (p: Point): Metres => (p[0] - a[0]) * -u[1] + (p[1] - a[1]) * u[0];
  if (Math.abs(off(c)) > touching || Math.abs(off(d)) > touching) return undefined;
  const along = (p: Point): Metres => (p[0] - a[0]) * u[0] + (p[1] - a[1]) * u[1];
  const [s, t] = [along(d), along(c)];
  if (t <= s) return undefined;
  const [from, to] = [Math.max(0, s), Math.min(size, t)];
  return to - from >= leastWidth ? [from, to] : undefined;
};

const onGrid = (p: Point): Point => [tidy(p[0]), tidy(p[1])];
