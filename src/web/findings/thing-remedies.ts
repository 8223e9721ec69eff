import type { ProblemCode, Site } from "#engine";
import { planningDefaults } from "#engine";
import { roomAt } from "./inside-room.ts";
import { type RemediesOf, type Remedy, recordIn, removing, setting } from "./remedy.ts";

const seated = planningDefaults.seatedRadius;

/** How far around it one moves, by kind of place. @source the planning numbers of a new job */
const radiusOf = {
  desk: seated,
  seat: seated,
  wc: 0.3,
  bench: seated,
  basin: 0.3,
  shower: 0.45,
  bath: 0.6,
  panel: seated,
  machine: seated,
} as const;

type Owned = "obstacles" | "dwellPlaces" | "interference" | "ceilingThings";

/** To the room that a thing stands in, or away with it. */
const assign =
  (kinds: readonly Owned[]): RemediesOf =>
  (finding, site) =>
    kinds.flatMap((kind): readonly (Remedy | undefined)[] => {
      const record = recordIn(kind, finding, site);
      if (record === undefined) return [];
      const at = "at" in record ? record.at : record.footprint[0];
      const room = at && roomAt(site, storeyOf(site, record.room), at);
      return [
        room && room.id !== record.room
          ? setting("findings.remedy.to-room", { kind, id: record.id, fields: { room: room.id } })
          : undefined,
        removing("findings.remedy.delete", kind, record.id),
      ];
    });

const storeyOf = (site: Site, room: string) => site.rooms.find(({ id }) => id === room)?.storey;

const ceilingOver = (site: Site, room: string | null): number | undefined =>
  site.rooms.find(({ id }) => id === room)?.ceilingHeight;

export const thingRemedies: Readonly<Partial<Record<ProblemCode, RemediesOf>>> = {
  "obstacle-outside-room": assign(["obstacles"]),
  "dwell-place-outside-room": assign(["dwellPlaces"]),
  "thing-outside-room": assign(["interference", "ceilingThings"]),
  "obstacle-upside-down": (finding, site) => {
    const obstacle = recordIn("obstacles", finding, site);
    if (obstacle === undefined || obstacle.base === obstacle.top) return [];
    const fields = { base: obstacle.top, top: obstacle.base };
    return [setting("findings.remedy.swap-heights", { kind: "obstacles", id: obstacle.id, fields })];
  },
  "obstacle-above-ceiling": (finding, site) => {
    const obstacle = recordIn("obstacles", finding, site);
    const top = obstacle && ceilingOver(site, obstacle.room);
    return [
      obstacle &&
        top &&
        setting("findings.remedy.to-ceiling", { kind: "obstacles", id: obstacle.id, fields: { top } }),
    ].map((remedy) => remedy || undefined);
  },
  "dwell-place-without-size": (finding, site) => {
    const place = recordIn("dwellPlaces", finding, site);
    const fields = place && { radius: radiusOf[place.kind] };
    return [
      place && fields && setting("findings.remedy.usual-size", { kind: "dwellPlaces", id: place.id, fields }),
    ];
  },
  "flight-does-not-rise": (finding, site) => {
    const piece = recordIn("floorPieces", finding, site);
    if (piece === undefined || piece.high >= piece.low) return [];
    const fields = { low: piece.high, high: piece.low };
    return [setting("findings.remedy.swap-heights", { kind: "floorPieces", id: piece.id, fields })];
  },
  "opening-upside-down": (finding, site) => {
    const opening = recordIn("openings", finding, site);
    if (opening === undefined || opening.sill === opening.head) return [];
    const fields = { sill: opening.head, head: opening.sill };
    return [setting("findings.remedy.swap-heights", { kind: "openings", id: opening.id, fields })];
  },
  "opening-above-ceiling": (finding, site) => {
    const opening = recordIn("openings", finding, site);
    const heights = (opening?.rooms ?? []).flatMap((room) => ceilingOver(site, room) ?? []);
    if (opening === undefined || heights.length === 0) return [];
    const fields = { head: Math.min(...heights) };
    return [setting("findings.remedy.to-ceiling", { kind: "openings", id: opening.id, fields })];
  },
  "door-above-floor": (finding, site) => {
    const door = recordIn("openings", finding, site);
    return [
      door && setting("findings.remedy.to-floor", { kind: "openings", id: door.id, fields: { sill: 0 } }),
    ];
  },
  "door-swings-elsewhere": (finding, site) => {
    const door = recordIn("openings", finding, site);
    const fields = door && { opensInto: door.rooms[0] };
    return [
      door && fields && setting("findings.remedy.swing-first", { kind: "openings", id: door.id, fields }),
    ];
  },
  "opening-to-deleted-room": (finding, site) => {
    const opening = recordIn("openings", finding, site);
    if (opening === undefined) return [];
    const there = opening.rooms.filter((room) => room === null || site.rooms.some(({ id }) => id === room));
    const first = there.find((room) => room !== null);
    if (first === undefined || first === null)
      return [removing("findings.remedy.delete", "openings", opening.id)];
    // `from` → `to` lies on the face of the first room: only the second may be set to outside.
    if (first !== opening.rooms[0]) return [];
    const fields = { rooms: [first, null] as const, opensInto: opening.opensInto === first ? first : null };
    return [setting("findings.remedy.to-outside", { kind: "openings", id: opening.id, fields })];
  },
  "opening-joins-same-room": (finding, site) => {
    const opening = recordIn("openings", finding, site);
    const fields = opening && { rooms: [opening.rooms[0], null] as const };
    return [
      opening &&
        fields &&
        setting("findings.remedy.to-outside", { kind: "openings", id: opening.id, fields }),
    ];
  },
  "model-mounting-limits-crossed": (finding, site) => {
    const model = recordIn("models", finding, site);
    const fields = model && { mounting: { min: model.mounting.max, max: model.mounting.min } };
    return [
      model && fields && setting("findings.remedy.swap-heights", { kind: "models", id: model.id, fields }),
    ];
  },
};
