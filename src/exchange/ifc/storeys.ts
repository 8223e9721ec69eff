import { type Metres, type Storey, say } from "#engine";
import type { Identities } from "../identities.ts";
import { tidy } from "../tidy.ts";
import type { ElementMesh } from "./kernel.ts";
import { type IfcModel, numberOf, refOf, textOf } from "./model.ts";
import type { Frames } from "./placement.ts";
import type { Relations } from "./relations.ts";

/** A storey with its height in the file's world. */
export interface ReadStorey {
  readonly step: number | undefined;
  readonly storey: Storey;
  /** Finished floor in the file's world. [m] */
  readonly level: Metres;
}

/** Storeys of all buildings, lowest first; names carry the building where there are several. None in the file: one made up. */
export function readStoreys(
  model: IfcModel,
  relations: Relations,
  context: { metres: number; frames: Frames; identities: Identities },
): readonly ReadStorey[] {
  const several = model.ids("IFCBUILDING").length > 1;
  const read = model.ids("IFCBUILDINGSTOREY").map((step): ReadStorey => {
    const values = model.values(step);
    const frame = context.frames.of(refOf(values[5]));
    const stated = numberOf(values[9]);
    const name = textOf(values[2]) || textOf(values[7]) || `Storey ${step}`;
    const building = relations.wholeOf.get(step);
    const of =
      several && building !== undefined
        ? textOf(model.values(building)[2]) || textOf(model.values(building)[7])
        : "";
    const id = context.identities.take(textOf(values[0]), `storey-${step}`, say`Storey ${name}`);
    const elevation = stated === undefined ? frame.origin[2] : stated * context.metres;
    return {
      step,
      storey: { id, name: of ? `${of}, ${name}` : name, elevation: tidy(elevation) },
      level: frame.origin[2],
    };
  });
  return read.length > 0
    ? read.sort((a, b) => a.storey.elevation - b.storey.elevation)
    : [madeUp(model, context)];
}

/** Stands in where the file names no storeys: the ground floor of its first building. `step` stays undefined. */
const madeUp = (model: IfcModel, context: { frames: Frames; identities: Identities }): ReadStorey => {
  const building = model.ids("IFCBUILDING", "IFCSITE")[0];
  const frame = context.frames.of(building === undefined ? undefined : refOf(model.values(building)[5]));
  const id = context.identities.take("", "storey-1", "Storey");
  return { step: undefined, storey: { id, name: "Storey 1", elevation: 0 }, level: frame.origin[2] };
};

/** The storey whose floor lies nearest below a height, with a hand's breadth to spare. */
export function storeyAt(storeys: readonly ReadStorey[], height: Metres): ReadStorey {
  const below = storeys.filter((each) => each.level <= height + 0.3);
  return below.reduce((best, each) => (each.level > best.level ? each : best), below[0] ?? storeys[0]!);
}

/** Puts a made-up storey where the lowest space of the file stands; storeys of the file stay as they are. */
export function standingStoreys(
  storeys: readonly ReadStorey[],
  spaces: ReadonlyMap<number, ElementMesh>,
): readonly ReadStorey[] {
  if (storeys[0]?.step !== undefined) return storeys;
  let lowest = Infinity;
  for (const mesh of spaces.values()) {
    for (const { corners } of mesh.parts)
      for (let i = 2; i < corners.length; i += 3) lowest = Math.min(lowest, corners[i]!);
  }
  return Number.isFinite(lowest) ? storeys.map((each) => ({ ...each, level: lowest })) : storeys;
}
