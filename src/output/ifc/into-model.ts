import { english, type ProblemCode, type Room, type Site } from "#engine";
import type { Speak } from "../words/speak.ts";
import { type InPlan, type SettingLine, sensorInto, sensorTypesInto } from "./devices-ifc.ts";
import { globalId } from "./global-id.ts";
import { modelWriter } from "./model-writer.ts";
import type { StepRef } from "./step-writer.ts";

/** A frame in the file's world: origin [m] and three unit axes. */
interface WorldFrame {
  readonly origin: readonly [number, number, number];
  readonly x: readonly [number, number, number];
  readonly y: readonly [number, number, number];
  readonly z: readonly [number, number, number];
}

/** A structure of the given model that devices can be filed under. */
interface Structure {
  readonly step: number;
  readonly id: string;
  readonly name: string;
  readonly placement: number | undefined;
  readonly frame: WorldFrame;
}

/** The building model that a job was read from. */
export interface ModelToFill {
  /** STEP text. */
  readonly bytes: Uint8Array;
  /** Offset at which records may be added. */
  readonly end: number;
  readonly schema: string;
  readonly lastStep: number;
  /** Metres in one unit of the file. */
  readonly metres: number;
  readonly ownerHistory: number | undefined;
  readonly context: number | undefined;
  readonly storeys: readonly (Structure & { readonly elevation: number })[];
  readonly spaces: readonly Structure[];
  readonly ground: Structure | undefined;
  readonly sensors: readonly string[];
  /** What the reading took off x and y to come near the origin. [m] */
  readonly shift: readonly [number, number];
}

/** Why a model cannot take the devices of a job. */
export type ModelRefusal = "another-building" | "filled-already" | "no-structure";

/** Under which of the program's problems a person is told so. */
export const refusalCodes = {
  "another-building": "model-of-another-building",
  "filled-already": "model-filled-already",
  "no-structure": "model-without-structure",
} as const satisfies Record<ModelRefusal, ProblemCode>;

/** What is said of the devices beside where they are. */
export interface ToldOfDevices {
  readonly settings: ReadonlyMap<string, readonly SettingLine[]>;
  /** What descriptions and values speak; English if absent. */
  readonly speak?: Speak;
}

/** Whether a model can take the devices of a job: it must be the building that the job was read from, as it was before. */
export function modelRefusal(site: Site, model: ModelToFill): ModelRefusal | undefined {
  const ids = new Set([...model.spaces, ...model.storeys].map(({ id }) => id));
  const known = [...site.rooms, ...site.storeys].some(({ id }) => ids.has(identityIn(id)));
  if (!known) return "another-building";
  const there = new Set(model.sensors);
  if (site.detectors.some(({ id }) => there.has(globalId(id)))) return "filled-already";
  return model.context === undefined || (!model.ground && model.storeys.length === 0)
    ? "no-structure"
    : undefined;
}

/**
 * A building model as it was given, with the detectors of the job added as sensors: filed under their rooms, placed in the frames of their storeys, with
 * their settings as properties. Not one byte of what was given is changed: records are added after the last one, in the file's own units, contexts and
 * schema.
 *
 * @param site - Of the job; of rooms that the model does not have, the storey holds the devices. @throws Where `modelRefusal` has a reason.
 * @source ISO-16739, IfcSensor, IfcDistributionControlElement, IfcSensorType
 * @source ISO-10303-21
 */
export function devicesIntoModel(
  site: Site,
  model: ModelToFill,
  { settings, speak = english }: ToldOfDevices,
): Uint8Array {
  const { context } = model;
  const refusal = modelRefusal(site, model);
  if (refusal !== undefined || context === undefined)
    throw new Error(`The model cannot take the devices: ${refusal}`);
  const schema = model.schema.startsWith("IFC4") ? "IFC4" : "IFC2X3";
  const writer = modelWriter(() => ({ ref: context }), {
    schema,
    metres: model.metres,
    owner: model.ownerHistory === undefined ? null : { ref: model.ownerHistory },
    taken: model.lastStep,
  });
  const sensorsOf = new Map<string, StepRef[]>();
  const held = new Map<number, StepRef[]>();
  for (const detector of site.detectors) {
    const room = site.rooms.find(({ id }) => id === detector.room);
    if (!room) continue;
    const storey = storeyIn(model, site, room)!;
    const space = model.spaces.find(({ id }) => id === identityIn(room.id));
    const sensor = sensorInto(
      writer,
      {
        room,
        storey: storey.placement === undefined ? null : { ref: storey.placement },
        floorPieces: site.floorPieces.filter((piece) => piece.room === room.id),
        toParent: intoFrame(storey.frame, model.shift),
      },
      { detector, site, settings: settings.get(detector.id) ?? [], speak },
    );
    sensorsOf.set(detector.model, [...(sensorsOf.get(detector.model) ?? []), sensor]);
    const holder = (space ?? storey).step;
    held.set(holder, [...(held.get(holder) ?? []), sensor]);
  }
  for (const [holder, sensors] of held) writer.contain(`detectors in ${holder}`, { ref: holder }, sensors);
  sensorTypesInto(writer, site.models, sensorsOf);
  return joined(model, `\n${writer.records()}`);
}

/** What a record of the job is in a model: rooms that a reading found in parts carry the identity of their space with a number behind it. */
const identityIn = (id: string): string => globalId(/^[0-3][\w$]{21}-\d+$/.test(id) ? id.slice(0, 22) : id);

/** The storey of a room in the model: the same record, else the one of its name, else the nearest in height. */
function storeyIn(model: ModelToFill, site: Site, room: Room): Structure | undefined {
  const own = site.storeys.find(({ id }) => id === room.storey);
  const away = ({ elevation }: { readonly elevation: number }): number =>
    Math.abs(elevation - (own?.elevation ?? 0));
  return (
    model.storeys.find(({ id }) => id === identityIn(room.storey)) ??
    model.storeys.find(({ name }) => name === own?.name) ??
    model.storeys.toSorted((a, b) => away(a) - away(b))[0] ??
    model.ground
  );
}

/** From the plan, whose heights count from the storey, into the frame of that storey. */
const intoFrame =
  ({ origin, x, y, z }: WorldFrame, shift: ModelToFill["shift"]) =>
  ({ at, along }: InPlan): InPlan => {
    const world = [at[0] + shift[0] - origin[0], at[1] + shift[1] - origin[1], at[2]] as const;
    const part = (axis: WorldFrame["x"], of: readonly [number, number, number]): number =>
      axis[0] * of[0] + axis[1] * of[1] + axis[2] * of[2];
    const direction = [along[0], along[1], 0] as const;
    return {
      at: [part(x, world), part(y, world), part(z, world)],
      along: [part(x, direction), part(y, direction)],
    };
  };

function joined({ bytes, end }: ModelToFill, text: string): Uint8Array {
  const added = new TextEncoder().encode(text);
  const whole = new Uint8Array(bytes.length + added.length);
  whole.set(bytes.subarray(0, end));
  whole.set(added, end);
  whole.set(bytes.subarray(end), end + added.length);
  return whole;
}
