import { type Metres, say } from "#engine";
import type { Identities } from "../identities.ts";
import { inPiece } from "../region.ts";
import type { FoundDetector } from "../survey.ts";
import { tidy } from "../tidy.ts";
import type { LeftOutList } from "./left-out.ts";
import { type IfcModel, numberOf, refOf, refsOf, textOf, wordOf } from "./model.ts";
import type { Frames } from "./placement.ts";
import type { Relations } from "./relations.ts";
import type { ReadRoom } from "./rooms.ts";

export interface SensorContext {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly frames: Frames;
  readonly rooms: readonly ReadRoom[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  /** Metres in one unit of the file. */
  readonly metres: Metres;
}

/**
 * Movement sensors of the file, which is how a model shows presence detectors; smoke heads and thermometers are sensors
 * of other types. IFC 2x3 has no record for them but that of any control element, whose type says what it is. Each belongs to the room it is filed under, else to the one it hangs in. Plan coordinates are still the file's own.
 *
 * @source ISO-16739, IfcSensor, IfcSensorTypeEnum, IfcDistributionControlElement
 */
export function readSensors(context: SensorContext): readonly FoundDetector[] {
  const { model } = context;
  const movement = model
    .ids("IFCSENSOR", "IFCDISTRIBUTIONCONTROLELEMENT")
    .filter((id) => kindOf(context, id) === "MOVEMENTSENSOR");
  if (movement.length === 0) return [];
  const properties = ownSetsIn(model);
  return movement.flatMap((id) => readSensor(id, { ...context, properties: properties.get(id) ?? [] }));
}

function readSensor(
  id: number,
  context: SensorContext & { readonly properties: readonly number[] },
): readonly FoundDetector[] {
  const { model, relations, frames, rooms, leftOut } = context;
  const values = model.values(id);
  const frame = frames.of(refOf(values[5]));
  const [x, y, z] = frame.origin;
  const filed = relations.structureOf.get(id);
  const room =
    rooms.find((each) => each.step === filed && inPiece([x, y], each.piece)) ??
    rooms.find(
      (each) =>
        inPiece([x, y], each.piece) && z > each.level && z < each.level + each.room.ceilingHeight + slack,
    );
  if (!room) {
    leftOut.add(say`detector`, say`it hangs in no room of the model`);
    return [];
  }
  const own = saidBy(model, context.properties);
  const stated = own.number("MountingHeight");
  const type = relations.typeOf.get(id);
  const names = type === undefined ? [] : model.values(type);
  const tag = textOf(values[7]) || textOf(values[2]);
  return [
    {
      id: context.identities.take(textOf(values[0]), `detector-${id}`, say`Detector ${tag}`),
      tag,
      room: room.room.id,
      model: own.text("Model") || textOf(names[7]) || textOf(names[2]),
      at: [tidy(x), tidy(y)],
      height: tidy(stated === undefined ? z - room.level : stated * context.metres),
      turn: tidy(turnOf(frame.x)),
    },
  ];
}

/** A ceiling's own thickness: what is recessed may be filed a little above it. [m] */
const slack: Metres = 0.3;

const turnOf = ([x, y]: readonly [number, number, number]): number => {
  const turn = Math.atan2(y, x);
  return turn < -1e-9 ? turn + 2 * Math.PI : Math.max(0, turn);
};

/** Own predefined type, else that of its type. */
const kindOf = ({ model, relations }: SensorContext, id: number): string => {
  const own = wordOf(model.values(id)[8]);
  if (own !== "" && own !== "NOTDEFINED") return own;
  const type = relations.typeOf.get(id);
  return type === undefined ? "" : wordOf(model.values(type)[9]);
};

/** Properties of our own sets, by the thing that they describe: all relations are looked through once. */
function ownSetsIn(model: IfcModel): ReadonlyMap<number, readonly number[]> {
  const properties = new Map<number, number[]>();
  for (const relation of model.ids("IFCRELDEFINESBYPROPERTIES")) {
    const values = model.values(relation);
    const own = refsOf(values[5]).filter((set) => textOf(model.values(set)[2]) === "Roomwake_Detector");
    if (own.length === 0) continue;
    const found = own.flatMap((set) => refsOf(model.values(set)[4]));
    for (const thing of refsOf(values[4]))
      properties.set(thing, [...(properties.get(thing) ?? []), ...found]);
  }
  return properties;
}

/** What our own property set says of a sensor: heights over stairs count from the step beneath, which no placement tells. */
const saidBy = (model: IfcModel, properties: readonly number[]) => {
  const value = (name: string) =>
    properties.map((one) => model.values(one)).find((property) => textOf(property[0]) === name)?.[2];
  return { text: (name: string) => textOf(value(name)), number: (name: string) => numberOf(value(name)) };
};
