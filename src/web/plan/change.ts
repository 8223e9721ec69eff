import type { Metres, Outline, Point, Radians, Site } from "#engine";
import { wholeTurn } from "#engine";
import type { EditStep, RecordRef } from "../contract.ts";
import { copySteps } from "./edit/copied.ts";
import { motionSteps, rotateSteps } from "./edit/motion.ts";
import { seenFromSecond } from "./edit/openings.ts";
import { mappedFields, millimetre, setDownBy, shiftBy } from "./edit/plan-map.ts";
import { wholeOf } from "./edit/selected.ts";
import { putStep, removeStep, setStep } from "./edit/steps.ts";
import { movedWall } from "./edit/wall.ts";
import { recordOf } from "./pick.ts";
import { middleOf } from "./shapes.ts";

export { freeTag } from "./free-tag.ts";

const rounded = ([x, y]: Point): Point => [millimetre(x), millimetre(y)];

/**
 * Steps that move records, rooms with all that is in them. Things come to rest on whole millimetres; rooms move by whole
 * millimetres, so that they keep their shape. An opening that was chosen alone stays in its wall: only the way along it counts.
 */
export function moveSteps(site: Site, refs: readonly RecordRef[], by: Point): EditStep[] {
  const whole = wholeOf(site, refs);
  const rooms = new Set(whole.rooms.map(({ id }) => id));
  const slid = whole.openings
    .filter((opening) => !opening.rooms.some((id) => id !== null && rooms.has(id)))
    .map((opening) => {
      const [dx, dy] = [opening.to[0] - opening.from[0], opening.to[1] - opening.from[1]];
      const length = Math.hypot(dx, dy) || 1;
      const along = (by[0] * dx + by[1] * dy) / length;
      const way: Point = [(dx / length) * along, (dy / length) * along];
      return setStep("openings", opening.id, mappedFields("openings", opening, setDownBy(way)));
    });
  return [...motionSteps(site, whole, rooms.size > 0 ? shiftBy(rounded(by)) : setDownBy(by)), ...slid];
}

/** Steps that turn one thing about its own middle, rooms and several things about their common one. */
export function turnSteps(site: Site, refs: readonly RecordRef[], by: Radians): EditStep[] {
  if (refs.length > 1 || refs[0]?.kind === "rooms") return rotateSteps(site, refs, by);
  return refs.flatMap((ref): EditStep[] => {
    const { id } = ref;
    if (ref.kind === "detectors" || ref.kind === "luminaires") {
      const record = recordOf(site, ref.kind, id);
      return record
        ? [{ do: "set", kind: ref.kind, id, fields: { turn: wholeTurn(record.turn + by) } } as EditStep]
        : [];
    }
    if (ref.kind === "obstacles") {
      const record = recordOf(site, "obstacles", id);
      if (!record) return [];
      const middle = middleOf(record.footprint);
      return [
        {
          do: "set",
          kind: "obstacles",
          id,
          fields: { footprint: record.footprint.map((point) => rounded(turnedAbout(point, middle, by))) },
        },
      ];
    }
    if (ref.kind === "openings") {
      // Turning a door hangs it the other way: hinge, then side.
      const record = recordOf(site, "openings", id);
      if (record?.kind !== "door") return [];
      const [first, second] = record.rooms;
      const fields =
        record.hinge === "from"
          ? { hinge: "to" as const }
          : { hinge: "from" as const, opensInto: record.opensInto === first ? second : first };
      return [{ do: "set", kind: "openings", id, fields }];
    }
    return [];
  });
}

const turnedAbout = ([x, y]: Point, [mx, my]: Point, by: Radians): Point => {
  const [c, s] = [Math.cos(by), Math.sin(by)];
  return [mx + (x - mx) * c - (y - my) * s, my + (x - mx) * s + (y - my) * c];
};

/** Steps that take records away, and with a room all that is in it. A door to a room that stays becomes that room's way outside. */
export function removeSteps(site: Site, refs: readonly RecordRef[]): EditStep[] {
  const whole = wholeOf(site, refs);
  const gone = new Set(whole.rooms.map(({ id }) => id));
  const chosen = new Set(refs.filter(({ kind }) => kind === "openings").map(({ id }) => id));
  const openings = whole.openings.map((opening) => {
    const [first, second] = opening.rooms;
    const stays = [first, second].filter((id) => id !== null && !gone.has(id));
    if (chosen.has(opening.id) || stays.length === 0) return removeStep("openings", opening.id);
    const own = gone.has(first) ? seenFromSecond(site, opening) : opening;
    const opensInto = own.opensInto === own.rooms[0] ? own.opensInto : null;
    return putStep("openings", { ...own, rooms: [own.rooms[0], null], opensInto });
  });
  return [
    ...openings,
    ...whole.placed.map(({ kind, id }) => removeStep(kind, id)),
    ...whole.rooms.map(({ id }) => removeStep("rooms", id)),
    ...refs
      .filter(({ kind }) => kind === "storeys" || kind === "models")
      .map(({ kind, id }) => removeStep(kind, id)),
  ];
}

/** Steps that put copies beside the originals, rooms with all that is in them. */
export const duplicateSteps = (
  site: Site,
  refs: readonly RecordRef[],
  to: { readonly by: Point; readonly newId: (kind: RecordRef["kind"]) => string },
) => copySteps(site, refs, { map: shiftBy(to.by), newId: to.newId });

/** Steps that give a ring of a record another corner, move one, or take one away. */
export function cornerSteps(
  site: Site,
  ref: RecordRef,
  change: {
    readonly index: number;
    readonly move?: Point;
    readonly insert?: Point;
    readonly drop?: "corner";
  },
): EditStep[] {
  const record =
    ref.kind === "rooms"
      ? recordOf(site, "rooms", ref.id)
      : ref.kind === "obstacles"
        ? recordOf(site, "obstacles", ref.id)
        : undefined;
  if (!record) return [];
  const ring = [...("outline" in record ? record.outline : record.footprint)];
  if (change.drop) {
    if (ring.length <= 3) return [];
    ring.splice(change.index, 1);
  } else if (change.insert) ring.splice(change.index + 1, 0, rounded(change.insert));
  else if (change.move) ring[change.index] = rounded(change.move);
  return ref.kind === "rooms"
    ? [{ do: "set", kind: "rooms", id: ref.id, fields: { outline: ring } }]
    : [{ do: "set", kind: "obstacles", id: ref.id, fields: { footprint: ring } }];
}

/**
 * Steps that move one side of a ring square to itself. A side of a room is a face of a wall: the faces of the rooms behind
 * that wall move as well, with the openings in it.
 */
export function wallSteps(
  site: Site,
  ref: RecordRef,
  change: { readonly index: number; readonly by: Metres },
): EditStep[] {
  if (ref.kind === "rooms") return movedWall(site, ref.id, change);
  const record = ref.kind === "obstacles" ? recordOf(site, "obstacles", ref.id) : undefined;
  if (!record) return [];
  const ring: Outline = record.footprint;
  const a = ring[change.index] as Point;
  const next = (change.index + 1) % ring.length;
  const b = ring[next] as Point;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const by: Point = [((b[1] - a[1]) / length) * change.by, (-(b[0] - a[0]) / length) * change.by];
  const footprint = ring.map(
    (point, i): Point =>
      i === change.index || i === next ? rounded([point[0] + by[0], point[1] + by[1]]) : point,
  );
  return [setStep("obstacles", ref.id, { footprint })];
}
