import { type IfcModel, numberOf, refOf, refsOf, textOf, wordOf } from "./model.ts";

/** A size that the file itself states for a thing. */
export interface Quantity {
  readonly name: string;
  readonly kind: "area" | "length" | "volume" | "other";
  /** In the file's own unit. */
  readonly value: number;
}

/** The relationships of the file that the reader follows. */
export interface Relations {
  /** Whole of a part, storey of a space, building of a storey. */
  readonly wholeOf: ReadonlyMap<number, number>;
  /** Storey or room that an element is filed under. */
  readonly structureOf: ReadonlyMap<number, number>;
  /** Opening that a door or window fills. */
  readonly openingFilledBy: ReadonlyMap<number, number>;
  readonly fillingOf: ReadonlyMap<number, number>;
  /** Wall or slab that an opening is cut into. */
  readonly hostOf: ReadonlyMap<number, number>;
  readonly typeOf: ReadonlyMap<number, number>;
  readonly quantitiesOf: (id: number) => readonly Quantity[];
}

/** Collects the relationships in one pass over their records. @source ISO-16739, IfcRelationship */
export function relationsOf(model: IfcModel): Relations {
  const wholeOf = new Map<number, number>();
  for (const id of model.ids("IFCRELAGGREGATES", "IFCRELNESTS", "IFCRELDECOMPOSES")) {
    const whole = refOf(model.values(id)[4]);
    if (whole !== undefined) for (const part of refsOf(model.values(id)[5])) wholeOf.set(part, whole);
  }
  const structureOf = pairs(model, "IFCRELCONTAINEDINSPATIALSTRUCTURE", 4, 5);
  const openingFilledBy = pairs(model, "IFCRELFILLSELEMENT", 5, 4);
  const fillingOf = new Map([...openingFilledBy].map(([filling, opening]) => [opening, filling]));
  const hostOf = pairs(model, "IFCRELVOIDSELEMENT", 5, 4);
  const typeOf = pairs(model, "IFCRELDEFINESBYTYPE", 4, 5);
  let sets: Map<number, number[]> | undefined;
  return {
    wholeOf,
    structureOf,
    openingFilledBy,
    fillingOf,
    hostOf,
    typeOf,
    quantitiesOf: (id) => {
      sets ??= quantitySets(model);
      return (sets.get(id) ?? []).flatMap((set) =>
        refsOf(model.values(set)[5]).flatMap((q) => quantity(model, q)),
      );
    },
  };
}

/** Storey that a thing belongs to, up through wholes, structures, openings and their walls. */
export function storeyOf(model: IfcModel, relations: Relations, id: number): number | undefined {
  let at: number | undefined = id;
  for (let step = 0; at !== undefined && step < 32; step++) {
    if (model.type(at) === "IFCBUILDINGSTOREY") return at;
    at =
      relations.structureOf.get(at) ??
      relations.wholeOf.get(at) ??
      relations.openingFilledBy.get(at) ??
      relations.hostOf.get(at);
  }
  return undefined;
}

/** Name of the type that a thing is an example of, with the type's own element type. */
export function typeNameOf(model: IfcModel, relations: Relations, id: number): string {
  const type = relations.typeOf.get(id);
  return type === undefined ? "" : textOf(model.values(type)[2]);
}

const pairs = (model: IfcModel, type: string, many: number, one: number): Map<number, number> => {
  const map = new Map<number, number>();
  for (const id of model.ids(type)) {
    const target = refOf(model.values(id)[one]);
    if (target !== undefined) for (const source of refsOf(model.values(id)[many])) map.set(source, target);
  }
  return map;
};

const quantitySets = (model: IfcModel): Map<number, number[]> => {
  const map = new Map<number, number[]>();
  for (const id of model.ids("IFCRELDEFINESBYPROPERTIES")) {
    const set = refOf(model.values(id)[5]);
    if (set === undefined || model.type(set) !== "IFCELEMENTQUANTITY") continue;
    for (const thing of refsOf(model.values(id)[4])) map.set(thing, [...(map.get(thing) ?? []), set]);
  }
  return map;
};

const kinds: Readonly<Record<string, Quantity["kind"]>> = {
  IFCQUANTITYAREA: "area",
  IFCQUANTITYLENGTH: "length",
  IFCQUANTITYVOLUME: "volume",
};

const quantity = (model: IfcModel, id: number): Quantity[] => {
  const values = model.values(id);
  const value = numberOf(values[3]);
  return value === undefined
    ? []
    : [{ name: textOf(values[0]), kind: kinds[model.type(id)] ?? "other", value }];
};

/** Predefined type word of an element or of its type. */
export const predefinedOf = (model: IfcModel, id: number, at: number): string => wordOf(model.values(id)[at]);
