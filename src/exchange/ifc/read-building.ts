import type { Problem } from "#engine";
import type { ImportResult } from "../survey.ts";
import { identities } from "./identities.ts";
import type { ElementMesh, OpenModel } from "./kernel.ts";
import { leftOutList } from "./left-out.ts";
import type { ReadLimits } from "./limits.ts";
import type { IfcModel } from "./model.ts";
import { relationsOf } from "./relations.ts";
import { readRooms } from "./rooms.ts";
import { readStoreys } from "./storeys.ts";
import { lengthUnit } from "./units.ts";

export interface BuildingContext {
  readonly open: OpenModel;
  readonly limits: ReadLimits;
  readonly progress: (step: string, share: number) => void;
  readonly fileName: string;
}

export function readBuilding(model: IfcModel, context: BuildingContext): ImportResult {
  const relations = relationsOf(model);
  const names = identities();
  const leftOut = leftOutList();
  const notes: Problem[] = [];
  const unit = lengthUnit(model);
  if (!unit) notes.push({ code: "ifc-no-unit", values: {} });
  const metres = unit?.metres ?? 1;
  const storeys = readStoreys(model, relations, { metres, identities: names });
  const spaces = model.ids("IFCSPACE");
  const meshes = new Map<number, ElementMesh>();
  context.open.stream(spaces, (mesh) => meshes.set(mesh.id, mesh));
  const rooms = readRooms(spaces, meshes, {
    model,
    relations,
    storeys,
    identities: names,
    leftOut,
    notes,
    corners: context.limits.roomCorners,
  });
  return {
    survey: {
      storeys: storeys.map((s) => s.storey),
      rooms: rooms.map((r) => r.room),
      floorPieces: [],
      openings: [],
      obstacles: [],
      dwellPlaces: [],
      luminaires: [],
      looseLuminaires: [],
      underlay: [],
      shift: [0, 0],
    },
    report: {
      file: context.fileName,
      schema: model.file.schema,
      unit: unit?.name ?? "",
      storeys: storeys.map((s) => ({
        name: s.storey.name,
        elevation: s.storey.elevation,
        rooms: rooms.filter((r) => r.room.storey === s.storey.id).length,
      })),
      rooms: rooms.map((r) => ({
        id: r.room.id,
        name: r.room.name,
        storey: r.room.storey,
        area: r.area,
        height: r.room.ceilingHeight,
      })),
      openings: 0,
      obstacles: 0,
      luminaires: 0,
      leftOut: leftOut.list(),
      notes: [...names.notes, ...notes],
    },
  };
}
