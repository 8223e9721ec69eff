import {
  controlledRooms,
  type Detector,
  type DetectorModel,
  degreesOf,
  type FloorPiece,
  floorHeight,
  type Luminaire,
  type Room,
  roomTitle,
  type Site,
  say,
  type Words,
  wholeTurn,
} from "#engine";
import type { Speak } from "../words/speak.ts";
import { globalId } from "./global-id.ts";
import type { ModelWriter } from "./model-writer.ts";
import { type StepRef, type StepValue, typed, word } from "./step-writer.ts";

/** A setting in words, as it stands on the device's setting sheet. */
export interface SettingLine {
  /** Name of the property: in English, as all of them are. */
  readonly title: string;
  readonly words: Words;
}

/** Where a record is placed, and the floor that its height counts from. */
export interface RoomFrame {
  readonly room: Room;
  readonly storey: StepRef | null;
  readonly floorPieces: readonly FloorPiece[];
  /** Where that is in the frame of its storey, which is the plan's own if absent. */
  readonly toParent?: (placed: InPlan) => InPlan;
}

/** A place over the plan with a direction in it. */
export interface InPlan {
  readonly at: readonly [number, number, number];
  readonly along: readonly [number, number];
}

/** The body is a symbol: a data sheet says how large the cut-out is, but not how the housing looks. [m] */
const housing = { radius: 0.05, height: 0.04 } as const;

const direction = (turn: number): readonly [number, number] => [Math.cos(turn), Math.sin(turn)];
const label = (text: string): StepValue => typed("IFCLABEL", text);

/** A detector as a movement sensor, its lens at the origin of its frame and its notch along x. */
export function sensorInto(
  writer: ModelWriter,
  frame: RoomFrame,
  of: {
    readonly detector: Detector;
    readonly site: Site;
    readonly settings: readonly SettingLine[];
    readonly speak: Speak;
  },
): StepRef {
  const { detector, site, settings, speak } = of;
  const { room, toParent = (placed) => placed } = frame;
  const z = room.floor + floorHeight(frame.floorPieces, detector.at) + detector.height;
  const length = (metres: number): StepValue => typed("IFCLENGTHMEASURE", writer.length(metres));
  const model = site.models.find(({ id }) => id === detector.model);
  const placed = toParent({ at: [detector.at[0], detector.at[1], z], along: direction(detector.turn) });
  const named = writer.dialect.schema === "IFC4";
  const sensor = writer.product({
    // IFC 2x3 has sensors as a type only: the element is one of control, and its type says the rest.
    type: named ? "IFCSENSOR" : "IFCDISTRIBUTIONCONTROLELEMENT",
    id: detector.id,
    name: detector.tag,
    description: speak(say`Presence detector ${detector.tag} in ${roomTitle(room)}`),
    objectType: "Occupancy sensor",
    placement: writer.placement({ parent: frame.storey, ...placed }),
    shape: writer.cylinder({ radius: (model?.cutOut ?? 0) / 2 || housing.radius, height: housing.height }),
    more: [detector.tag, named ? word("MOVEMENTSENSOR") : detector.tag],
  });
  writer.properties(detector.id, sensor, {
    name: "Roomwake_Detector",
    values: [
      ["Tag", label(detector.tag)],
      ["Room", label(roomTitle(room))],
      ["Model", label(detector.model)],
      ["ModelTitle", label(model?.title ?? detector.model)],
      ["MountingHeight", length(detector.height)],
      ["TurnDegrees", typed("IFCREAL", Math.round(degreesOf(wholeTurn(detector.turn)) * 10) / 10)],
      ["Group", label(detector.group)],
      [
        "Switches",
        label(
          controlledRooms(detector)
            .map((id) => roomTitle(site.rooms.find((one) => one.id === id)))
            .join("; "),
        ),
      ],
      ...(detector.circuit ? [["Circuit", label(detector.circuit)] as const] : []),
    ],
  });
  writer.properties(detector.id, sensor, {
    name: "Roomwake_Settings",
    values: settings.map(({ title, words }) => [title, label(speak(words))] as const),
  });
  return sensor;
}

/** One type record for each model of detector in use, with the sensors of that model. */
export function sensorTypesInto(
  writer: ModelWriter,
  models: readonly DetectorModel[],
  sensorsOf: ReadonlyMap<string, readonly StepRef[]>,
): void {
  for (const model of models) {
    const sensors = sensorsOf.get(model.id) ?? [];
    if (sensors.length === 0) continue;
    const type = writer.add(
      "IFCSENSORTYPE",
      globalId(`model ${model.id}`),
      writer.dialect.owner,
      model.title,
      null,
      null,
      null,
      null,
      model.id,
      null,
      word("MOVEMENTSENSOR"),
    );
    writer.relate("IFCRELDEFINESBYTYPE", `model ${model.id}`, [...sensors], type);
  }
}

/** Height of the body of a luminaire: only its underside is on record. [m] */
const lampHeight = 0.05;
/** A luminaire without a size is drawn as a point of this size. [m] */
const leastSize = 0.1;

/** A luminaire with its underside at its height. */
export function luminaireInto(writer: ModelWriter, frame: RoomFrame, luminaire: Luminaire): StepRef {
  const { room } = frame;
  const z = room.floor + floorHeight(frame.floorPieces, luminaire.at) + luminaire.height;
  const [a, b] = [luminaire.length, luminaire.width].map((size) => Math.max(size, leastSize) / 2) as [
    number,
    number,
  ];
  const fixture = writer.product({
    type: "IFCLIGHTFIXTURE",
    id: luminaire.id,
    name: luminaire.name,
    ...(luminaire.type ? { objectType: luminaire.type } : {}),
    placement: writer.placement({
      parent: frame.storey,
      at: [luminaire.at[0], luminaire.at[1], z],
      along: direction(luminaire.turn),
    }),
    shape: writer.body([
      {
        outline: [
          [-a, -b],
          [a, -b],
          [a, b],
          [-a, b],
        ],
        height: lampHeight,
      },
    ]),
    more: [null, word("NOTDEFINED")],
  });
  writer.properties(luminaire.id, fixture, {
    name: "Roomwake_Luminaire",
    values: [
      ...(luminaire.power === undefined
        ? []
        : [["Power", typed("IFCPOWERMEASURE", luminaire.power)] as const]),
      ...(luminaire.circuit ? [["Circuit", label(luminaire.circuit)] as const] : []),
    ],
  });
  return fixture;
}
