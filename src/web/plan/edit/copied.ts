import type { Metres, Opening, Point, Site, Storey } from "#engine";
import type { EditStep, RecordKind, RecordOf, RecordRef } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { freeTag } from "../free-tag.ts";
import { type PlacedKind, recordOf, roomAt, roomsOn } from "../pick.ts";
import { insideRoom } from "../shapes.ts";
import { standing } from "./motion.ts";
import { behind, leadsUpOrDown, relinked, seenFromSecond } from "./openings.ts";
import { mapped, type PlanMap, shiftBy } from "./plan-map.ts";
import { type Whole, wholeOf } from "./selected.ts";
import { putStep } from "./steps.ts";

export interface Copied {
  readonly steps: readonly EditStep[];
  /** What one would select afterwards: rooms for all that is in them. */
  readonly made: readonly RecordRef[];
}

type NewId = (kind: RecordKind) => string;

/**
 * Steps that make a second one of everything in a selection, rooms with all that is in them. Doors between copied rooms lead
 * between the copies, other doors to what lies behind the copied wall. Detectors get tags of their own and are not pinned.
 *
 * @param to.storey - Storey of the copied rooms; that of the originals if absent.
 */
export function copySteps(
  site: Site,
  refs: readonly RecordRef[],
  to: { readonly map: PlanMap; readonly newId: NewId; readonly storey?: string },
): Copied {
  return copiesOf(site, wholeOf(site, refs), to);
}

/** The same for what was gathered, from a site that may be another one than that of `into`. */
export function copiesOf(
  from: Site,
  whole: Whole,
  to: { readonly map: PlanMap; readonly newId: NewId; readonly storey?: string; readonly into?: Site },
): Copied {
  const { map, newId, storey, into = from } = to;
  const ids = new Map(whole.rooms.map(({ id }) => [id, newId("rooms")]));
  const rooms = whole.rooms.map((room) =>
    putStep("rooms", {
      ...mapped("rooms", room, map),
      id: ids.get(room.id) as string,
      ...(storey === undefined ? {} : { storey }),
    }),
  );
  const between = applied(into, rooms);
  const made: RecordRef[] = [...ids.values()].map((id) => ({ kind: "rooms", id }));
  let tags = into;
  const placed = whole.placed.flatMap(({ kind, id }): EditStep[] => {
    const record = recordOf(from, kind, id);
    if (!record) return [];
    const moved: RecordOf<PlacedKind> = mapped(kind, record, map);
    const room = ids.get(record.room) ?? roomFor(between, { record: moved, storey });
    if (room === undefined) return [];
    const copy = { ...moved, id: newId(kind), room };
    if (!ids.has(record.room)) made.push({ kind, id: copy.id });
    if (!("controls" in copy)) return [putStep(kind, copy)];
    // On another storey, and in another job, tags follow the numbers there: an empty one asks for the next.
    const tag = storey === undefined ? freeTag(tags) : "";
    const controls = copy.controls.flatMap(
      (one) => ids.get(one) ?? (recordOf(into, "rooms", one) ? one : []),
    );
    const device = { ...copy, tag, pinned: false, controls: controls.length > 0 ? controls : [room] };
    tags = { ...tags, detectors: [...tags.detectors, device] };
    return [putStep("detectors", device)];
  });
  const openings = whole.openings.flatMap((opening): EditStep[] => {
    const copy = openingCopy(from, opening, { ids, map, between, id: newId("openings") });
    if (!copy) return [];
    if (!opening.rooms.some((id) => id !== null && ids.has(id))) made.push({ kind: "openings", id: copy.id });
    return [putStep("openings", copy)];
  });
  return { steps: [...rooms, ...placed, ...openings], made };
}

/** The room that the copy of a thing comes to stand in: its own where it still lies there, else the one round it, else its own. */
function roomFor(
  site: Site,
  of: {
    readonly record: { readonly room: string; readonly at?: Point };
    readonly storey: string | undefined;
  },
): string | undefined {
  const own = recordOf(site, "rooms", of.record.room);
  const at = standing(of.record);
  const storey = of.storey ?? own?.storey;
  if (storey === undefined || !at) return own?.id;
  if (own?.storey === storey && insideRoom(own, at)) return own.id;
  const here = own?.storey === storey ? own : [...roomsOn(site, storey).values()][0];
  return roomAt(site, storey, at)?.id ?? here?.id;
}

function openingCopy(
  from: Site,
  opening: Opening,
  to: {
    readonly ids: ReadonlyMap<string, string>;
    readonly map: PlanMap;
    readonly between: Site;
    readonly id: string;
  },
): Opening | undefined {
  const { ids, map, between, id } = to;
  const [first, second] = opening.rooms;
  if (!ids.has(first) && (second === null || !ids.has(second)))
    return recordOf(between, "rooms", first) ? { ...besides(opening, map), id } : undefined;
  const own = ids.has(first) ? opening : seenFromSecond(from, opening);
  const copied = (room: string | null): string | null => (room === null ? null : (ids.get(room) ?? null));
  const copy: Opening = {
    ...mapped("openings", own, map),
    id,
    rooms: [copied(own.rooms[0]) as string, copied(own.rooms[1])],
    opensInto: copied(own.opensInto),
  };
  // What led outside although a room lies behind it was meant so.
  const meant = leadsUpOrDown(from, own) || (own.rooms[1] === null && behind(from, own) !== undefined);
  return copy.rooms[1] !== null || meant ? copy : relinked(between, copy);
}

/** A second opening in the same wall: beside the first, however it was moved. */
function besides(opening: Opening, map: PlanMap): Opening {
  const [dx, dy] = [opening.to[0] - opening.from[0], opening.to[1] - opening.from[1]];
  const width = Math.hypot(dx, dy) || 1;
  const moved = map.at(opening.from);
  const along = ((moved[0] - opening.from[0]) * dx + (moved[1] - opening.from[1]) * dy) / width;
  const way = (along < -1e-9 ? -1 : 1) * Math.max(Math.abs(along), width + 0.1);
  const aside = shiftBy([(dx / width) * way, (dy / width) * way]);
  return mapped("openings", opening, aside);
}

/** Steps that repeat a selection in a row: `count` copies, each a step further than the last. */
export function rowSteps(
  site: Site,
  refs: readonly RecordRef[],
  row: { readonly count: number; readonly by: Point; readonly newId: NewId },
): Copied {
  let now = site;
  const steps: EditStep[] = [];
  const made: RecordRef[] = [];
  for (let n = 1; n <= row.count; n++) {
    const one = copiesOf(site, wholeOf(site, refs), {
      map: shiftBy([row.by[0] * n, row.by[1] * n]),
      newId: row.newId,
      into: now,
    });
    steps.push(...one.steps);
    made.push(...one.made);
    now = applied(now, one.steps);
  }
  return { steps, made };
}

/** Slab between the ceiling of one storey and the floor of the next, where nothing better is known. [m] */
const slab: Metres = 0.4;

/** Where a storey on top of all others begins: above the uppermost by that one's own height. */
export function nextElevation(site: Site): Metres {
  const falling = [...site.storeys].sort((a, b) => b.elevation - a.elevation);
  const [top, below] = falling;
  if (!top) return 0;
  if (below && top.elevation - below.elevation > 1.8)
    return tidy(top.elevation + top.elevation - below.elevation);
  const ceilings = [...roomsOn(site, top.id).values()].map(
    ({ floor, ceilingHeight }) => floor + ceilingHeight,
  );
  return tidy(top.elevation + Math.max(2.6, ...ceilings) + slab);
}

const tidy = (value: Metres): Metres => Math.round(value * 1000) / 1000;

/** Steps that copy a storey with all its rooms to a new one. */
export function storeyCopySteps(
  site: Site,
  id: string,
  to: { readonly name: string; readonly elevation: Metres; readonly newId: NewId },
): { readonly steps: readonly EditStep[]; readonly storey: string } {
  const storey: Storey = { id: to.newId("storeys"), name: to.name, elevation: to.elevation };
  const put = putStep("storeys", storey);
  const copy = copiesOf(site, wholeOf(site, [{ kind: "storeys", id }]), {
    map: shiftBy([0, 0]),
    newId: to.newId,
    storey: storey.id,
    into: applied(site, [put]),
  });
  return { steps: [put, ...copy.steps], storey: storey.id };
}
