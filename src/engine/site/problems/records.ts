import { type Problem, type Said, say, type Words } from "../../check/index.ts";
import { ceilingThingKindNames, dwellKindNames, interferenceKindNames } from "../kind-names.ts";
import { controlledRooms, roomTitle, type SiteLookUp } from "../look-up.ts";
import { nameOfOpening, nameOfThing } from "../names.ts";
import type { Detector, DwellKind, PlanningDefaults } from "../site.ts";

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
  const lists: readonly (readonly [kind: Said, records: readonly { readonly id: string }[]])[] = [
    [say`storeys`, site.storeys],
    [say`rooms`, site.rooms],
    [say`floor pieces`, site.floorPieces],
    [say`openings`, site.openings],
    [say`obstacles`, site.obstacles],
    [say`dwell places`, site.dwellPlaces],
    [say`sources of false triggering`, site.interference],
    [say`things on the ceiling`, site.ceilingThings],
    [say`luminaires`, site.luminaires],
    [say`models`, site.models],
    [say`detectors`, site.detectors],
  ];
  return lists.flatMap(([kind, records]) =>
    doubled(records, (record) => record.id).map(
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
}: SiteLookUp): { readonly what: Words; readonly record: { readonly id: string; readonly room: string } }[] {
  return [
    ...site.floorPieces.map((record) => ({
      what: record.kind === "flight" ? say`A flight` : say`A landing`,
      record,
    })),
    ...site.obstacles.map((record) => ({ what: nameOfThing(record), record })),
    ...site.dwellPlaces.map((record) => ({ what: say`A ${dwellKindNames[record.kind]}`, record })),
    ...site.interference.map((record) => ({
      what: say`A source of false triggering (${interferenceKindNames[record.kind]})`,
      record,
    })),
    ...site.ceilingThings.map((record) => ({
      what: say`A ${ceilingThingKindNames[record.kind]} on the ceiling`,
      record,
    })),
    ...site.luminaires.map((record) => ({ what: say`Luminaire ${record.name}`, record })),
  ];
}

/** Planning numbers and the range in which the calculations hold. Beyond it they would divide by nothing or never end. */
function planningNumbers({ site: { defaults } }: SiteLookUp): Problem[] {
  const ranges: readonly (readonly [field: Said, value: number, least: number, most: number])[] = [
    [say`margin for seated`, defaults.margin.seated, 0, 0.9],
    [say`margin for towards`, defaults.margin.towards, 0, 0.9],
    [say`margin for across`, defaults.margin.across, 0, 0.9],
    [say`margin for spill`, defaults.margin.spill, 0, 2],
    [say`body radius`, defaults.bodyRadius, 0, 0.6],
    [say`seated radius`, defaults.seatedRadius, 0.05, 3],
    [say`walking speed`, defaults.speed, 0.1, 5],
    [say`onset`, defaults.onset, 0, 5],
    [say`response`, defaults.response, 0, 30],
    [say`lamp start`, defaults.lampStart, 0, 30],
    [say`dark walk limit`, defaults.darkWalkLimit, 0, 50],
    [say`stair lead`, defaults.stairLead, 0, 10],
    [say`tolerated gap area`, defaults.gapArea, 0, 10],
    [say`tolerated gap share`, defaults.gapShare, 0, 0.5],
    [say`spacing`, defaults.spacing, 0.05, 5],
    [say`sight height walking`, defaults.sightHeights.walking, 0, 2.5],
    ...(Object.keys(dwellKindNames) as readonly DwellKind[]).map(
      (kind) => [say`sight height ${dwellKindNames[kind]}`, defaults.sightHeights[kind], 0, 2.5] as const,
    ),
    ...(Object.keys(clearanceNames) as readonly (keyof typeof clearanceNames)[]).map(
      (kind) => [clearanceNames[kind], defaults.clearances[kind], 0, 20] as const,
    ),
  ];
  return ranges
    .filter(([, value, least, most]) => !(value >= least && value <= most))
    .map(([field, value, least, most]) => ({
      code: "default-out-of-range",
      values: { field, value, least, most },
    }));
}

const clearanceNames: Readonly<Record<keyof PlanningDefaults["clearances"], Said>> = {
  wall: say`clearance to the wall`,
  wallLeast: say`least clearance to the wall`,
  luminaireFlush: say`clearance to flush luminaires`,
  luminaireHot: say`clearance to hot lamps`,
  airOutlet: say`clearance to air outlets`,
  heater: say`clearance to heaters`,
  smokeHead: say`clearance to smoke heads`,
};

function doubled<Kind>(records: readonly Kind[], keyOf: (record: Kind) => string): [string, Kind[]][] {
  const groups = new Map<string, Kind[]>();
  for (const record of records) {
    const group = groups.get(keyOf(record));
    if (group) group.push(record);
    else groups.set(keyOf(record), [record]);
  }
  return [...groups].filter(([, group]) => group.length > 1);
}
