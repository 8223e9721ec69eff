import type { Metres, Outline, Point, Radians, Room, Site } from "#engine";
import { wholeTurn } from "#engine";
import type { EditStep, RecordRef } from "../contract.ts";
import { recordOf, roomAt } from "./pick.ts";
import { insideRoom, middleOf } from "./shapes.ts";

/** Plan coordinates are kept to the millimetre. */
const millimetre = (value: Metres): Metres => Math.round(value * 1000) / 1000;
const rounded = ([x, y]: Point): Point => [millimetre(x), millimetre(y)];
const shifted = ([x, y]: Point, by: Point): Point => rounded([x + by[0], y + by[1]]);
const shiftedRing = (ring: Outline, by: Point): Outline => ring.map((point) => shifted(point, by));

/** Steps that move records. What stands in a moved room stays where it is: a room's outline is a fact of its own. */
export function moveSteps(site: Site, refs: readonly RecordRef[], by: Point): EditStep[] {
  return refs.flatMap((ref) => moveOne(site, ref, by));
}

function moveOne(site: Site, ref: RecordRef, by: Point): EditStep[] {
  const { id } = ref;
  switch (ref.kind) {
    case "detectors":
    case "dwellPlaces":
    case "ceilingThings":
    case "luminaires":
    case "switches": {
      const record = recordOf(site, ref.kind, id);
      if (!record) return [];
      const at = shifted(record.at, by);
      return [
        { do: "set", kind: ref.kind, id, fields: { at, ...newRoom(site, record.room, at) } } as EditStep,
      ];
    }
    case "interference": {
      const record = recordOf(site, "interference", id);
      if (!record) return [];
      const at = shifted(record.at, by);
      const to = record.to ? { to: shifted(record.to, by) } : {};
      return [
        { do: "set", kind: "interference", id, fields: { at, ...to, ...newRoom(site, record.room, at) } },
      ];
    }
    case "obstacles": {
      const record = recordOf(site, "obstacles", id);
      if (!record) return [];
      const footprint = shiftedRing(record.footprint, by);
      const room = newRoom(site, record.room, middleOf(footprint));
      return [{ do: "set", kind: "obstacles", id, fields: { footprint, ...room } }];
    }
    case "floorPieces": {
      const record = recordOf(site, "floorPieces", id);
      if (!record) return [];
      const fields = {
        footprint: shiftedRing(record.footprint, by),
        from: shifted(record.from, by),
        to: shifted(record.to, by),
      };
      return [{ do: "set", kind: "floorPieces", id, fields }];
    }
    case "openings": {
      const record = recordOf(site, "openings", id);
      if (!record) return [];
      // An opening stays in its wall: only the way along it counts.
      const [dx, dy] = [record.to[0] - record.from[0], record.to[1] - record.from[1]];
      const length = Math.hypot(dx, dy) || 1;
      const along = (by[0] * dx + by[1] * dy) / length;
      const way: Point = [(dx / length) * along, (dy / length) * along];
      return [
        {
          do: "set",
          kind: "openings",
          id,
          fields: { from: shifted(record.from, way), to: shifted(record.to, way) },
        },
      ];
    }
    case "rooms": {
      const record = recordOf(site, "rooms", id);
      if (!record) return [];
      const fields = {
        outline: shiftedRing(record.outline, by),
        holes: record.holes.map((hole) => shiftedRing(hole, by)),
        noDevices: record.noDevices.map((ring) => shiftedRing(ring, by)),
      };
      return [{ do: "set", kind: "rooms", id, fields }, ...withContents(site, record, by)];
    }
    case "storeys":
    case "models":
      return [];
  }
}

/** All that belongs to a room goes with it. */
function withContents(site: Site, room: Room, by: Point): EditStep[] {
  const inside: RecordRef[] = (
    [
      "detectors",
      "dwellPlaces",
      "ceilingThings",
      "luminaires",
      "interference",
      "obstacles",
      "floorPieces",
    ] as const
  ).flatMap((kind) =>
    site[kind]
      .filter((record) => record.room === room.id)
      .map((record): RecordRef => ({ kind, id: record.id })),
  );
  const steps = moveSteps({ ...site, rooms: [] }, inside, by);
  const openings = site.openings
    .filter((opening) => opening.rooms.includes(room.id))
    .map(
      (opening): EditStep => ({
        do: "set",
        kind: "openings",
        id: opening.id,
        fields: { from: shifted(opening.from, by), to: shifted(opening.to, by) },
      }),
    );
  return [...steps, ...openings];
}

/** The room that a thing now stands in, if it is another one than before. */
function newRoom(site: Site, id: string, at: Point): { readonly room?: string } {
  const own = site.rooms.find((room) => room.id === id);
  if (!own || insideRoom(own, at)) return {};
  const other = roomAt(site, own.storey, at);
  return other ? { room: other.id } : {};
}

/** Steps that turn records about their own middles. */
export function turnSteps(site: Site, refs: readonly RecordRef[], by: Radians): EditStep[] {
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

/** Steps that take records away, and with a room all that is in it. */
export function removeSteps(site: Site, refs: readonly RecordRef[]): EditStep[] {
  const steps = new Map<string, EditStep>();
  const add = (ref: RecordRef): void => {
    steps.set(`${ref.kind} ${ref.id}`, { do: "remove", kind: ref.kind, id: ref.id } as EditStep);
  };
  for (const ref of refs) {
    add(ref);
    if (ref.kind !== "rooms") continue;
    for (const kind of [
      "detectors",
      "dwellPlaces",
      "ceilingThings",
      "luminaires",
      "interference",
      "obstacles",
      "floorPieces",
    ] as const)
      for (const record of site[kind]) if (record.room === ref.id) add({ kind, id: record.id });
    for (const opening of site.openings) {
      if (opening.rooms[0] === ref.id && opening.rooms[1] === null) add({ kind: "openings", id: opening.id });
      else if (opening.rooms[1] === ref.id)
        steps.set(`openings ${opening.id}`, {
          do: "set",
          kind: "openings",
          id: opening.id,
          fields: {
            rooms: [opening.rooms[0], null],
            ...(opening.opensInto === ref.id ? { opensInto: null } : {}),
          },
        });
      else if (opening.rooms[0] === ref.id) add({ kind: "openings", id: opening.id });
    }
  }
  return [...steps.values()];
}

/** Steps that put copies beside the originals. Copies of detectors get the next free tag. */
export function duplicateSteps(
  site: Site,
  refs: readonly RecordRef[],
  to: { readonly by: Point; readonly newId: (kind: RecordRef["kind"]) => string },
): { readonly steps: EditStep[]; readonly made: RecordRef[] } {
  const made: RecordRef[] = [];
  let shown = site;
  const steps = refs.flatMap((ref): EditStep[] => {
    if (ref.kind === "storeys" || ref.kind === "models" || ref.kind === "rooms") return [];
    const record = recordOf(site, ref.kind, ref.id);
    if (!record) return [];
    const id = to.newId(ref.kind);
    made.push({ kind: ref.kind, id });
    const tag = ref.kind === "detectors" ? { tag: freeTag(shown), pinned: false } : {};
    const copy = { ...record, ...tag, id };
    shown = { ...shown, [ref.kind]: [...shown[ref.kind], copy] };
    const [moved] = moveSteps({ ...site, [ref.kind]: [copy] } as Site, [{ kind: ref.kind, id }], to.by);
    const fields = moved?.do === "set" ? moved.fields : {};
    return [{ do: "put", kind: ref.kind, record: { ...copy, ...fields } } as unknown as EditStep];
  });
  return { steps, made };
}

/** The next tag in the manner of the tags there are: B1.04 → B1.05. */
export function freeTag(site: Site): string {
  const taken = new Set(site.detectors.map((device) => device.tag));
  const last = [...taken].sort((a, b) => a.localeCompare(b, "en", { numeric: true })).at(-1) ?? "B1.00";
  const found = /^(.*?)(\d+)$/.exec(last);
  const [stem, digits] = found ? [found[1] as string, found[2] as string] : [`${last}.`, "00"];
  for (let n = Number(digits) + 1; ; n++) {
    const tag = `${stem}${String(n).padStart(digits.length, "0")}`;
    if (!taken.has(tag)) return tag;
  }
}

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

/** Steps that move one side of a ring square to itself; openings in a room's wall go along. */
export function wallSteps(
  site: Site,
  ref: RecordRef,
  change: { readonly index: number; readonly by: Metres },
): EditStep[] {
  const record =
    ref.kind === "rooms"
      ? recordOf(site, "rooms", ref.id)
      : ref.kind === "obstacles"
        ? recordOf(site, "obstacles", ref.id)
        : undefined;
  if (!record) return [];
  const ring = "outline" in record ? record.outline : record.footprint;
  const a = ring[change.index] as Point;
  const b = ring[(change.index + 1) % ring.length] as Point;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const by: Point = [((b[1] - a[1]) / length) * change.by, (-(b[0] - a[0]) / length) * change.by];
  const next = ring.map((point, i) =>
    i === change.index || i === (change.index + 1) % ring.length ? shifted(point, by) : point,
  );
  if (ref.kind === "obstacles")
    return [{ do: "set", kind: "obstacles", id: ref.id, fields: { footprint: next } }];
  const inWall = site.openings.filter(
    (opening) =>
      opening.rooms.includes(ref.id) && onSegment(a, b, opening.from) && onSegment(a, b, opening.to),
  );
  return [
    { do: "set", kind: "rooms", id: ref.id, fields: { outline: next } },
    ...inWall.map(
      (opening): EditStep => ({
        do: "set",
        kind: "openings",
        id: opening.id,
        fields: { from: shifted(opening.from, by), to: shifted(opening.to, by) },
      }),
    ),
  ];
}

/** An opening counts as in a wall when both ends are within half a wall's thickness of it. */
function onSegment(a: Point, b: Point, point: Point): boolean {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const away = Math.abs((point[0] - a[0]) * (b[1] - a[1]) - (point[1] - a[1]) * (b[0] - a[0])) / length;
  const along = ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / length;
  return away < 0.05 && along > -0.05 && along < length + 0.05;
}
