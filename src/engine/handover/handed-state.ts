import { english } from "../check/index.ts";
import type { DetectorModel } from "../detector/index.ts";
import { areaOf, type Outline, type Point, regionOf } from "../geometry/index.ts";
import { degreesOf } from "../quantity/index.ts";
import type { SiteSettings } from "../review/index.ts";
import {
  controlledRooms,
  lookUp,
  nameOfThing,
  roomTitle,
  type Site,
  type SiteLookUp,
} from "../site/index.ts";
import type { FoundInstallation } from "../wiring/index.ts";

/** One thing that was handed over with a record: a figure in the unit of its name, a word, a place in the plan. */
export type HandedFact = number | string | boolean | readonly [number, number];

/** Kinds of records that are handed over, in the order in which differences are told. */
export const handedKinds = [
  "rooms",
  "openings",
  "obstacles",
  "dwellPlaces",
  "interference",
  "luminaires",
  "switches",
  "models",
  "detectors",
  "circuits",
] as const;
export type HandedKind = (typeof handedKinds)[number];

/** What was handed over of one record: facts by their names. */
export type HandedRecord = Readonly<Record<string, HandedFact>>;

/** What was handed over of a job: records by kind and id, "detectors/d1". */
export type HandedState = Readonly<Record<string, HandedRecord>>;

/** A fact that nobody knows is left out. */
type Facts = Readonly<Record<string, HandedFact | undefined>>;

/**
 * What a hand-over holds of a job, as flat facts that can be kept and held against a later state.
 *
 * Lengths in metres, areas in square metres, angles in whole and tenth degrees, times in seconds. Settings are those that hold, chosen or derived. Rooms and models are
 * named by their titles, so that a state reads when they are long gone.
 *
 * @param site - Snapshot of the job. @param beside.settings - Settings of its detectors. @param beside.found - Its boards and circuits.
 * @returns Facts by record; nothing of drawings, notes and readings.
 * @source COMMON-PRACTICE
 * @example A detector at (2, 1), 2.5 m high: at [2, 1], height 2.5
 */
export function handedState(
  site: Site,
  beside: { readonly settings: Pick<SiteSettings, "devices">; readonly found: FoundInstallation },
): HandedState {
  const look = lookUp(site);
  const title = (id: string | null): string =>
    id === null ? "outside" : roomTitle(look.roomById.get(id)) || id;
  const inRoom = (id: string): Facts => ({ room: title(id) });
  const set = new Map(beside.settings.devices.map((device) => [device.context.device, settingFacts(device)]));
  return Object.fromEntries([
    ...records("rooms", site.rooms, (room) => ({
      title: roomTitle(room) || room.id,
      storey: site.storeys.find(({ id }) => id === room.storey)?.name ?? "",
      use: room.use,
      at: middle(room.outline),
      area: tidy(areaOf(regionOf(room.outline, room.holes)), 2),
      shape: shapeOf([room.outline, ...room.holes]),
      ceiling: tidy(room.ceilingHeight, 3),
      temperature: room.highestTemperature,
      escape: room.escapeRoute,
      floor: tidy(room.floor, 3),
      daylight: room.daylight,
      wet: room.wet,
    })),
    ...records("openings", site.openings, (opening) => ({
      between: opening.rooms.map(title).join(" – "),
      kind: opening.kind,
      at: middle([opening.from, opening.to]),
      width: tidy(Math.hypot(opening.to[0] - opening.from[0], opening.to[1] - opening.from[1]), 3),
      head: tidy(opening.head, 3),
      sill: tidy(opening.sill, 3),
      thickness: tidy(opening.thickness, 3),
      hinge: opening.hinge === "from" ? "first end" : "second end",
      state: opening.state,
      into: title(opening.opensInto),
    })),
    ...records("obstacles", site.obstacles, (obstacle) => ({
      name: english(nameOfThing(obstacle)),
      ...inRoom(obstacle.room),
      at: middle(obstacle.footprint),
      shape: shapeOf([obstacle.footprint]),
      top: tidy(obstacle.top, 3),
      base: tidy(obstacle.base, 3),
      seeThrough: obstacle.seeThrough,
    })),
    ...records("dwellPlaces", site.dwellPlaces, (place) => ({
      kind: place.kind,
      ...inRoom(place.room),
      at: placed(place.at),
    })),
    ...records("interference", site.interference, (source) => ({
      kind: source.kind,
      ...inRoom(source.room),
      at: placed(source.at),
      above: tidy(source.height, 3),
      clearance: source.clearance,
    })),
    ...records("luminaires", site.luminaires, (luminaire) => ({
      name: luminaire.name,
      ...inRoom(luminaire.room),
      at: placed(luminaire.at),
      type: luminaire.type,
      power: luminaire.power,
      circuit: luminaire.circuit,
    })),
    ...records("switches", site.switches, (one) => ({
      kind: one.kind,
      ...inRoom(one.room),
      at: placed(one.at),
      planned: one.planned,
      circuit: one.circuit,
    })),
    ...records(
      "models",
      site.models.filter(({ id }) => site.detectors.some(({ model }) => model === id)),
      (model) => ({ title: model.title, reach: reachOf(model) }),
    ),
    ...records("detectors", site.detectors, (detector) => ({
      tag: detector.tag,
      ...inRoom(detector.room),
      model: look.modelById.get(detector.model)?.title || detector.model,
      at: placed(detector.at),
      height: tidy(detector.height, 3),
      turn: turned(detector.turn),
      masks: masksOf(detector.masks),
      controls: controlsOf(detector, { title, look }),
      circuit: detector.circuit,
      fitted: detector.fitted,
      fixing: detector.fixing,
      wetZone: detector.wetZone,
      ...set.get(detector.id),
    })),
    ...records("circuits", beside.found.circuits, (circuit) => ({
      name: circuit.name,
      board: beside.found.boards.find(({ id }) => id === circuit.board)?.name,
      breaker: circuit.rating === undefined ? circuit.breaker : `${circuit.breaker} ${circuit.rating} A`,
      rcd: circuit.residualCurrent ?? circuit.rcd,
      section: circuit.cable?.section,
      length: circuit.cable?.length,
    })),
  ]);
}

function records<Item extends { readonly id: string }>(
  kind: HandedKind,
  items: readonly Item[],
  facts: (item: Item) => Facts,
): readonly (readonly [string, HandedRecord])[] {
  return items.map((item) => [
    `${kind}/${item.id}`,
    Object.fromEntries(
      Object.entries(facts(item)).filter(
        (entry): entry is [string, HandedFact] => entry[1] !== undefined && entry[1] !== "",
      ),
    ),
  ]);
}

/** Settings as facts, "set.offDelay": [s], lux or words as the setting has it. */
function settingFacts({ settings }: SiteSettings["devices"][number]): Facts {
  return Object.fromEntries(
    Object.entries(settings).map(([name, { value }]) => [`set.${name}`, flat(value)]),
  );
}

function flat(value: unknown): HandedFact {
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  const parts = value as { readonly background?: number; readonly pulse?: number; readonly pause?: number };
  if (parts.background !== undefined) return `two-level, ${Math.round(100 * parts.background)} %`;
  return `${parts.pulse} s on, ${parts.pause} s pause`;
}

/** Longest declared reach by kind and mounting height. */
const reachOf = ({ zones }: DetectorModel): string =>
  Object.entries(zones)
    .flatMap(([kind, rows = []]) =>
      rows.map((row) => {
        const reach = "radius" in row ? row.radius : Math.max(...row.outline.map(([, radius]) => radius));
        return `${kind} ${tidy(reach, 2)} m at ${tidy(row.height, 2)} m`;
      }),
    )
    .join(", ");

const controlsOf = (
  detector: Site["detectors"][number],
  { title, look }: { readonly title: (id: string) => string; readonly look: SiteLookUp },
): string =>
  controlledRooms(detector)
    .filter((id) => look.roomById.has(id))
    .map(title)
    .toSorted()
    .join(", ");

const masksOf = (masks: Site["detectors"][number]["masks"]): string =>
  masks
    .map(({ from, to, inner, outer }) => {
      const [a, b, c, d] = [from, to, inner, outer].map((angle) => tidy(degreesOf(angle), 1));
      return `${a}°…${b}°, ${c}°…${d}° from straight down`;
    })
    .toSorted()
    .join("; ");

const tidy = (value: number, digits: number): number => Number(value.toFixed(digits));

/** To the millimetre. */
const placed = ([x, y]: Point): readonly [number, number] => [tidy(x, 3), tidy(y, 3)];

/** [°], to a tenth, 0 … 360. */
const turned = (angle: number): number => tidy(((degreesOf(angle) % 360) + 360) % 360, 1) % 360;

const middle = (points: readonly Point[]): readonly [number, number] =>
  placed([
    points.reduce((sum, [x]) => sum + x, 0) / points.length,
    points.reduce((sum, [, y]) => sum + y, 0) / points.length,
  ]);

/** Corners as one line, counted from the first corner: what moves as a whole keeps its shape. */
const shapeOf = (rings: readonly Outline[]): string => {
  const [x, y] = rings[0]?.[0] ?? [0, 0];
  return rings
    .map((ring) => ring.map((corner) => placed([corner[0] - x, corner[1] - y]).join(" ")).join(", "))
    .join("; ");
};
