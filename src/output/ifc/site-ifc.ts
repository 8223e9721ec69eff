import { english, type Room, roomTitle, type Site, type Storey } from "#engine";
import { onStorey } from "../drawing/storey-records.ts";
import type { Speak } from "../words/speak.ts";
import { luminaireInto, type SettingLine, sensorInto, sensorTypesInto } from "./devices-ifc.ts";
import { globalId } from "./global-id.ts";
import { type ModelWriter, modelWriter } from "./model-writer.ts";
import { openingsInto } from "./openings-ifc.ts";
import { derived, type StepRef, typed, whole, word } from "./step-writer.ts";

export interface SiteIfcDetails {
  readonly job: string;
  readonly site: string;
  readonly drawnBy: string;
  /** Stamped into the head; the same date and job give the same bytes. */
  readonly created: Date;
  /** What names, descriptions and values speak; English if absent. Names of properties are English in every model. */
  readonly speak?: Speak;
  /** What is set on each detector, in words. */
  readonly settings?: ReadonlyMap<string, readonly SettingLine[]>;
}

/**
 * A job as a building model that others can open: project, site, building, storeys, rooms as spaces with their outlines,
 * openings with the wall they sit in, luminaires, and every detector as a movement sensor in its space.
 *
 * Records that came out of a model keep its identities, so that the two can be laid over each other.
 *
 * @returns Text of an IFC4 file in metres; the same job gives the same bytes.
 * @source ISO-16739, ISO-10303-21
 */
export function siteIfc(site: Site, details: SiteIfcDetails): string {
  const owner = details.job || site.name || "Job";
  let context: StepRef = { ref: 0 };
  const writer = modelWriter((add) => {
    const origin = add("IFCAXIS2PLACEMENT3D", add("IFCCARTESIANPOINT", [0, 0, 0]), null, null);
    context = add("IFCGEOMETRICREPRESENTATIONCONTEXT", null, "Model", whole(3), 1e-5, origin, null);
    return add(
      "IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
      "Body",
      "Model",
      derived,
      derived,
      derived,
      derived,
      context,
      null,
      word("MODEL_VIEW"),
      null,
    );
  });
  const project = writer.add(
    "IFCPROJECT",
    globalId(`project ${owner}`),
    null,
    owner,
    null,
    null,
    null,
    null,
    [context],
    unitsOf(writer),
  );
  const ground = writer.placement({ parent: null, at: [0, 0, 0] });
  const land = writer.product({
    type: "IFCSITE",
    id: `site ${owner}`,
    name: details.site || "Site",
    placement: ground,
    shape: null,
    more: [null, word("ELEMENT"), null, null, null, null, null],
  });
  const house = writer.placement({ parent: ground, at: [0, 0, 0] });
  const building = writer.product({
    type: "IFCBUILDING",
    id: `building ${owner}`,
    name: owner,
    placement: house,
    shape: null,
    more: [null, word("ELEMENT"), null, null, null],
  });
  writer.aggregate("project", project, [land]);
  writer.aggregate("site", land, [building]);
  const sensorsOf = new Map<string, StepRef[]>();
  const storeys = site.storeys.map((storey) =>
    storeyInto(writer, { site, storey, house, details, sensorsOf }),
  );
  writer.aggregate("building", building, storeys);
  sensorTypesInto(writer, site.models, sensorsOf);
  return writer.text({
    schema: "IFC4",
    view: "ViewDefinition [ReferenceView_V1.2]",
    name: owner,
    stamp: details.created.toISOString().slice(0, 19),
    author: details.drawnBy,
  });
}

const unitsOf = (writer: ModelWriter): StepRef =>
  writer.add(
    "IFCUNITASSIGNMENT",
    (
      [
        ["LENGTHUNIT", "METRE"],
        ["AREAUNIT", "SQUARE_METRE"],
        ["VOLUMEUNIT", "CUBIC_METRE"],
        ["PLANEANGLEUNIT", "RADIAN"],
        ["POWERUNIT", "WATT"],
      ] as const
    ).map(([kind, name]) => writer.add("IFCSIUNIT", derived, word(kind), null, word(name))),
  );

interface StoreyTask {
  readonly site: Site;
  readonly storey: Storey;
  readonly house: StepRef;
  readonly details: SiteIfcDetails;
  /** Sensors by model; filled here. */
  readonly sensorsOf: Map<string, StepRef[]>;
}

function storeyInto(writer: ModelWriter, task: StoreyTask): StepRef {
  const { site, storey, house, details, sensorsOf } = task;
  const { speak = english } = details;
  const placement = writer.placement({ parent: house, at: [0, 0, storey.elevation] });
  const level = writer.product({
    type: "IFCBUILDINGSTOREY",
    id: storey.id,
    name: storey.name,
    placement,
    shape: null,
    more: [null, word("ELEMENT"), storey.elevation],
  });
  const on = onStorey(site, storey.id);
  const spaces = on.rooms.map((room) => {
    const space = spaceInto(writer, placement, room);
    const frame = {
      room,
      storey: placement,
      floorPieces: on.floorPieces.filter((piece) => piece.room === room.id),
    };
    const sensors = on.detectors
      .filter((detector) => detector.room === room.id)
      .map((detector) => {
        const sensor = sensorInto(writer, frame, {
          detector,
          site,
          settings: details.settings?.get(detector.id) ?? [],
          speak,
        });
        sensorsOf.set(detector.model, [...(sensorsOf.get(detector.model) ?? []), sensor]);
        return sensor;
      });
    const luminaires = on.luminaires
      .filter((luminaire) => luminaire.room === room.id)
      .map((luminaire) => luminaireInto(writer, frame, luminaire));
    writer.contain(`in ${room.id}`, space, [...sensors, ...luminaires]);
    return space;
  });
  writer.aggregate(`storey ${storey.id}`, level, spaces);
  // An opening belongs to the storey of its first room, on whose face it lies.
  const rooms = new Map(on.rooms.map((room) => [room.id, room]));
  const openings = on.openings.flatMap((opening) => {
    const room = rooms.get(opening.rooms[0]);
    if (!room) return [];
    return [{ opening, room, floorPieces: on.floorPieces.filter((piece) => piece.room === room.id) }];
  });
  writer.contain(`on ${storey.id}`, level, openingsInto(writer, placement, { openings, speak }));
  return level;
}

function spaceInto(writer: ModelWriter, storey: StepRef, room: Room): StepRef {
  const title = room.number || room.name || roomTitle(room);
  const space = writer.product({
    type: "IFCSPACE",
    id: room.id,
    name: title,
    placement: writer.placement({ parent: storey, at: [0, 0, room.floor] }),
    shape: writer.body([{ outline: room.outline, holes: room.holes, height: room.ceilingHeight }]),
    more: [room.name || title, word("ELEMENT"), word("INTERNAL"), null],
  });
  writer.properties(room.id, space, {
    name: "Roomwake_Room",
    values: [["Use", typed("IFCLABEL", room.use)]],
  });
  return space;
}
