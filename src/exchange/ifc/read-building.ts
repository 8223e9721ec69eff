import type { Problem } from "#engine";
import { type Identities, identities } from "../identities.ts";
import type { ImportResult, SurveyRecords } from "../survey.ts";
import { contactsOf, openContacts } from "./contacts.ts";
import type { ElementMesh, OpenModel } from "./kernel.ts";
import { type LeftOutList, leftOutList } from "./left-out.ts";
import type { ReadLimits } from "./limits.ts";
import { luminairesOf, readLuminaires } from "./luminaires.ts";
import type { IfcModel } from "./model.ts";
import { readOpenings, wallHoles } from "./openings.ts";
import { type Frames, framesIn } from "./placement.ts";
import { type Relations, relationsOf, storeyOf } from "./relations.ts";
import { readRooms } from "./rooms.ts";
import { readSensors } from "./sensors.ts";
import { nearOrigin } from "./shift.ts";
import { flightsOf, readFlights } from "./stairs.ts";
import { type ReadStorey, readStoreys, standingStoreys } from "./storeys.ts";
import { readThings, thingsOf } from "./things.ts";
import { partingsOf, readUnderlay, wallsOf } from "./underlay.ts";
import { lengthUnit } from "./units.ts";

export interface BuildingContext {
  readonly open: OpenModel;
  readonly limits: ReadLimits;
  readonly progress: (step: string, share: number) => void;
  readonly fileName: string;
}

/** What every step of one reading works with. */
export interface Reading {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly frames: Frames;
  readonly storeys: readonly ReadStorey[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  readonly notes: Problem[];
  readonly limits: ReadLimits;
}

/**
 * One building model into survey records:
 * 1. storeys · 2. rooms · 3. openings between them · 4. what stands and hangs in them · 5. walls where there are no rooms.
 */
export function readBuilding(model: IfcModel, context: BuildingContext): ImportResult {
  const { limits, progress } = context;
  const relations = relationsOf(model);
  const notes: Problem[] = [];
  const unit = lengthUnit(model);
  if (!unit) notes.push({ code: "ifc-no-unit", values: {} });
  const metres = unit?.metres ?? 1;
  const names = identities();
  const frames = framesIn(model, metres);
  const found = readStoreys(model, relations, { metres, frames, identities: names });
  const base = { model, relations, frames, identities: names, leftOut: leftOutList(), notes, limits };

  progress("rooms", 0.2);
  const spaces = model.ids("IFCSPACE");
  const spaceMeshes = meshesOf(context.open, spaces);
  const storeys = standingStoreys(found, spaceMeshes);
  if (storeys[0]?.step === undefined) notes.push({ code: "ifc-no-storeys", values: {} });
  const reading: Reading = { ...base, storeys };
  const rooms = readRooms(spaces, spaceMeshes, { ...reading, corners: limits.roomCorners });
  const inside = { ...reading, rooms };

  progress("openings", 0.5);
  const holes = rooms.length > 0 ? wallHoles(model, relations, reading.leftOut) : [];
  const cut = readOpenings(
    holes,
    meshesOf(
      context.open,
      holes.map((hole) => hole.body),
    ),
    inside,
  );
  const contacts = contactsOf(rooms);
  const between =
    contacts.length > 0 ? meshesOf(context.open, partingsOf(model)) : new Map<number, ElementMesh>();
  const openings = [
    ...cut,
    ...openContacts(contacts, [...between.values()], { openings: cut, identities: names }),
  ];

  progress("things", 0.7);
  const lamps = luminairesOf(model, relations, reading.leftOut);
  const luminaires = readLuminaires(lamps, meshesOf(context.open, lamps), inside);
  const things = rooms.length > 0 ? thingsOf(model, relations, reading.leftOut) : [];
  const read = readThings(things, meshesOf(context.open, things), inside);
  const flights = rooms.length > 0 ? flightsOf(model) : [];
  const floorPieces = readFlights(flights, meshesOf(context.open, flights), inside);

  const detectors = readSensors({ ...inside, metres });

  progress("walls", 0.9);
  const bare = new Set(
    storeys
      .filter((each) => !rooms.some((room) => room.room.storey === each.storey.id))
      .map((each) => each.step),
  );
  const walls =
    bare.size === 0
      ? []
      : wallsOf(model).filter((id) => rooms.length === 0 || bare.has(storeyOf(model, relations, id)));
  const drawings = readUnderlay(walls, meshesOf(context.open, walls), {
    ...reading,
    fileName: context.fileName,
  });

  if (rooms.length + drawings.length + lamps.length === 0) {
    return {
      problems: [{ code: "ifc-nothing-inside", values: { records: model.file.ids.length } }],
    };
  }
  if (rooms.length === 0) notes.push({ code: "ifc-no-rooms", values: { storeys: drawings.length } });
  progress("done", 1);
  const survey: SurveyRecords = nearOrigin({
    storeys: storeys.map((each) => each.storey),
    rooms: rooms.map((each) => each.room),
    floorPieces,
    openings,
    ...read,
    luminaires: luminaires.placed,
    looseLuminaires: luminaires.loose,
    ...(detectors.length > 0 && { detectors }),
    drawings,
    shift: [0, 0],
  });
  return {
    survey,
    report: {
      file: context.fileName,
      schema: model.file.schema,
      unit: unit?.name ?? "",
      storeys: storeys.map(({ storey }) => ({
        name: storey.name,
        elevation: storey.elevation,
        rooms: rooms.filter((each) => each.room.storey === storey.id).length,
      })),
      rooms: rooms.map(({ room, area }) => ({
        id: room.id,
        name: room.name,
        storey: room.storey,
        area,
        height: room.ceilingHeight,
      })),
      openings: openings.length,
      obstacles: read.obstacles.length,
      luminaires: luminaires.placed.length + luminaires.loose.length,
      leftOut: reading.leftOut.list(),
      notes: [...notes, ...names.notes],
    },
  };
}

const meshesOf = (open: OpenModel, ids: readonly number[]): ReadonlyMap<number, ElementMesh> => {
  const meshes = new Map<number, ElementMesh>();
  open.stream(ids, (mesh) => meshes.set(mesh.id, mesh));
  return meshes;
};
