import type { Metres, Problem } from "#engine";
import { type ReadLimits, usualLimits } from "./limits.ts";
import { type IfcModel, modelOf, numberOf, refOf, textOf, wordOf } from "./model.ts";
import { type Frame, type Frames, framesIn } from "./placement.ts";
import { relationsOf, storeyOf } from "./relations.ts";
import { scanStep } from "./step-scan.ts";
import { lengthUnit } from "./units.ts";
import { isZip, unzipModel } from "./unzip.ts";

/** A structure of a model that things can be filed under, with its frame in the file's world. */
export interface GivenPlace {
  /** Instance name of its record. */
  readonly step: number;
  /** GlobalId. */
  readonly id: string;
  readonly name: string;
  /** Instance name of its placement; undefined: the world itself. */
  readonly placement: number | undefined;
  readonly frame: Frame;
}

/** A building model as it was given, with all that one must know to add records to it. */
export interface GivenModel {
  /** STEP text, unpacked. */
  readonly bytes: Uint8Array;
  /** Where records may be added: after the last one. */
  readonly end: number;
  readonly schema: string;
  /** The highest instance name that is taken. */
  readonly lastStep: number;
  /** Metres in one unit of the file. */
  readonly metres: Metres;
  readonly ownerHistory: number | undefined;
  /** Context of bodies, the file's own. */
  readonly context: number | undefined;
  readonly storeys: readonly (GivenPlace & { readonly elevation: Metres })[];
  /** Rooms, each with the storey that holds it. */
  readonly spaces: readonly (GivenPlace & { readonly storey: number | undefined })[];
  /** The first building, else the site: where a file names no storeys. */
  readonly ground: GivenPlace | undefined;
  /** GlobalIds of the sensors that it has already. */
  readonly sensors: readonly string[];
}

/**
 * Reads of a building model what one must know to add records to it. Its shapes are not looked at.
 *
 * @param bytes - STEP text, or zipped. @returns The model, or the first thing that is wrong with it.
 * @source ISO-10303-21 for how records are written, ISO-16739 for what they mean
 */
export function givenModel(
  bytes: Uint8Array,
  limits: ReadLimits = usualLimits,
): GivenModel | { readonly problem: Problem } {
  const text = isZip(bytes) ? unzipModel(bytes, limits) : bytes;
  if ("code" in text) return { problem: text };
  const file = scanStep(text, limits);
  if ("code" in file) return { problem: file };
  const model = modelOf(file);
  const metres = lengthUnit(model)?.metres ?? 1;
  const frames = framesIn(model, metres);
  const relations = relationsOf(model);
  const ids = model.ids("IFCBUILDING", "IFCSITE");
  const last = file.ids.length - 1;
  return {
    bytes: text,
    end: last < 0 ? text.length : afterRecord(text, file.to[last]!),
    schema: file.schema,
    lastStep: file.ids.reduce((most, id) => Math.max(most, id), 0),
    metres,
    ownerHistory: model.ids("IFCOWNERHISTORY")[0],
    context: bodyContext(model),
    storeys: model.ids("IFCBUILDINGSTOREY").map((step) => {
      const place = placeOf(model, frames, step);
      const stated = numberOf(model.values(step)[9]);
      return { ...place, elevation: stated === undefined ? place.frame.origin[2] : stated * metres };
    }),
    spaces: model
      .ids("IFCSPACE")
      .map((step) => ({ ...placeOf(model, frames, step), storey: storeyOf(model, relations, step) })),
    ground: ids[0] === undefined ? undefined : placeOf(model, frames, ids[0]),
    sensors: model
      .ids("IFCSENSOR", "IFCDISTRIBUTIONCONTROLELEMENT")
      .map((step) => textOf(model.values(step)[0])),
  };
}

function placeOf(model: IfcModel, frames: Frames, step: number): GivenPlace {
  const values = model.values(step);
  const placement = refOf(values[5]);
  return {
    step,
    id: textOf(values[0]),
    name: textOf(values[2]) || textOf(values[7]),
    placement,
    frame: frames.of(placement),
  };
}

/** The sub-context of bodies, else the context of the model in space. */
function bodyContext(model: IfcModel): number | undefined {
  const bodies = model
    .ids("IFCGEOMETRICREPRESENTATIONSUBCONTEXT")
    .filter((id) => textOf(model.values(id)[0]).toUpperCase() === "BODY");
  const inSpace = model
    .ids("IFCGEOMETRICREPRESENTATIONCONTEXT")
    .filter((id) => numberOf(model.values(id)[2]) === 3 || wordOf(model.values(id)[2]) === "3");
  return bodies[0] ?? inSpace[0] ?? model.ids("IFCGEOMETRICREPRESENTATIONCONTEXT")[0];
}

const [slash, star, semicolon] = [47, 42, 59];

/** The byte after the semicolon of a record whose parameters end at an offset; comments may stand between. */
function afterRecord(bytes: Uint8Array, closing: number): number {
  let at = closing + 1;
  while (at < bytes.length && bytes[at] !== semicolon) {
    if (bytes[at] === slash && bytes[at + 1] === star) {
      at += 2;
      while (at < bytes.length && !(bytes[at] === star && bytes[at + 1] === slash)) at++;
      at++;
    }
    at++;
  }
  return at + 1;
}
