import type { Problem } from "../../check/index.ts";
import { controlledRooms, roomTitle, type SiteLookUp } from "../look-up.ts";
import { nameOfOpening, nameOfThing, readable } from "../names.ts";
import type { Detector } from "../site.ts";

/**
 * What is wrong with the site's records as records: ids and tags used twice, references that lead nowhere, numbers that are none.
 *
 * @param look - The site's records at hand.
 * @returns One problem for each fault.
 * @example Two detectors tagged "B3" give one problem "duplicate-tag" that names both
 */
export function recordProblems(look: SiteLookUp): readonly Problem[] {
  return [
    ...doubledIds(look),
    ...doubledTags(look.site.detectors),
    ...doubledRoomNumbers(look),
    ...lostReferences(look),
    ...planningNumbers(look),
  ];
}

function doubledIds({ site }: SiteLookUp): Problem[] {
  const lists = {
    storeys: site.storeys,
    rooms: site.rooms,
    "floor pieces": site.floorPieces,
    openings: site.openings,
    obstacles: site.obstacles,
    "dwell places": site.dwellPlaces,
    "sources of false triggering": site.interference,
    "things on the ceiling": site.ceilingThings,
    luminaires: site.luminaires,
    models: site.models,
    detectors: site.detectors,
  } as const;
  return Object.entries(lists).flatMap(([kind, records]) =>
    doubled(records as readonly { readonly id: string }[], (record) => record.id).map(
      ([id, group]): Problem => ({
        code: "duplicate-id",
        values: { id, kind, count: group.length },
        records: [id],
      }),
    ),
  );
}

function doubledTags(detectors: readonly Detector[]): Problem[] {
  return doubled(
    detectors.filter((detector) => detector.tag.trim() !== ""),
    (detector) => detector.tag.trim(),
  ).map(([tag, group]) => ({
    code: "duplicate-tag",
    values: { tag, count: group.length },
    records: group.map((detector) => detector.id),
  }));
}

function doubledRoomNumbers({ site, storeyById }: SiteLookUp): Problem[] {
  return doubled(
    site.rooms.filter((room) => room.number.trim() !== ""),
    (room) => `${room.storey}\n${room.number.trim()}`,
  ).map(([, group]) => ({
    code: "duplicate-room-number",
    values: {
      number: group[0]?.number ?? "",
      count: group.length,
      storey: storeyById.get(group[0]?.storey ?? "")?.name ?? "?",
    },
    records: group.map((room) => room.id),
  }));
}

function lostReferences(look: SiteLookUp): Problem[] {
  const { site, roomById, storeyById, modelById } = look;
  const problems: Problem[] = [];
  for (const room of site.rooms) {
    if (!storeyById.has(room.storey))
      problems.push({
        code: "storey-missing",
        values: { room: roomTitle(room) },
        room: room.id,
        records: [room.id],
      });
  }
  for (const { what, record } of thingsInRooms(look)) {
    if (!roomById.has(record.room))
      problems.push({ code: "record-in-deleted-room", values: { what }, records: [record.id] });
  }
  for (const opening of site.openings) {
    if (opening.rooms.some((room) => room !== null && !roomById.has(room))) {
      problems.push({
        code: "opening-to-deleted-room",
        values: { opening: nameOfOpening(opening, look) },
        records: [opening.id],
      });
    }
  }
  for (const detector of site.detectors) {
    const common = { values: { tag: detector.tag }, records: [detector.id] };
    if (!roomById.has(detector.room)) problems.push({ code: "detector-in-deleted-room", ...common });
    const room = roomById.has(detector.room) ? { room: detector.room } : {};
    if (controlledRooms(detector).some((id) => id !== detector.room && !roomById.has(id)))
      problems.push({ code: "controls-deleted-room", ...room, ...common });
    if (!modelById.has(detector.model)) problems.push({ code: "model-unknown", ...room, ...common });
  }
  return problems;
}

function thingsInRooms({
  site,
}: SiteLookUp): { readonly what: string; readonly record: { readonly id: string; readonly room: string } }[] {
  return [
    ...site.floorPieces.map((record) => ({ what: `A ${record.kind}`, record })),
    ...site.obstacles.map((record) => ({ what: nameOfThing(record), record })),
    ...site.dwellPlaces.map((record) => ({ what: `A ${record.kind}`, record })),
    ...site.interference.map((record) => ({
      what: `A source of false triggering (${readable(record.kind)})`,
      record,
    })),
    ...site.ceilingThings.map((record) => ({ what: `A ${readable(record.kind)} on the ceiling`, record })),
    ...site.luminaires.map((record) => ({ what: `Luminaire ${record.name}`, record })),
  ];
}

/** Planning numbers and the range in which the calculations hold. Beyond it they would divide by nothing or never end. */
function planningNumbers({ site: { defaults } }: SiteLookUp): Problem[] {
  const ranges: readonly (readonly [field: string, value: number, least: number, most: number])[] = [
    ["margin for seated", defaults.margin.seated, 0, 0.9],
    ["margin for towards", defaults.margin.towards, 0, 0.9],
    ["margin for across", defaults.margin.across, 0, 0.9],
    ["margin for spill", defaults.margin.spill, 0, 2],
    ["body radius", defaults.bodyRadius, 0, 0.6],
    ["seated radius", defaults.seatedRadius, 0.05, 3],
    ["walking speed", defaults.speed, 0.1, 5],
    ["onset", defaults.onset, 0, 5],
    ["response", defaults.response, 0, 30],
    ["lamp start", defaults.lampStart, 0, 30],
    ["dark walk limit", defaults.darkWalkLimit, 0, 50],
    ["stair lead", defaults.stairLead, 0, 10],
    ["tolerated gap area", defaults.gapArea, 0, 10],
    ["tolerated gap share", defaults.gapShare, 0, 0.5],
    ["spacing", defaults.spacing, 0.05, 5],
    ...Object.entries(defaults.sightHeights).map(
      ([kind, value]) => [`sight height ${kind}`, value, 0, 2.5] as const,
    ),
    ...Object.entries(defaults.clearances).map(
      ([kind, value]) => [`clearance ${kind}`, value, 0, 20] as const,
    ),
  ];
  return ranges
    .filter(([, value, least, most]) => !(value >= least && value <= most))
    .map(([field, value, least, most]) => ({
      code: "default-out-of-range",
      values: { field, value, least, most },
    }));
}

function doubled<Kind>(records: readonly Kind[], keyOf: (record: Kind) => string): [string, Kind[]][] {
  const groups = new Map<string, Kind[]>();
  for (const record of records) {
    const group = groups.get(keyOf(record));
    if (group) group.push(record);
    else groups.set(keyOf(record), [record]);
  }
  return [...groups].filter(([, group]) => group.length > 1);
}
