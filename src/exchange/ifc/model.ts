import type { StepFile } from "./step-file.ts";
import { parameters, type StepValue } from "./step-values.ts";

/** Look-ups over a checked STEP file, by instance name. */
export interface IfcModel {
  readonly file: StepFile;
  /** Instance names of the records of these types, in file order. */
  ids(...types: readonly string[]): readonly number[];
  /** Type of a record in capitals; "" where there is none. */
  type(id: number): string;
  /** Parameters of a record; none where there is no such record. */
  values(id: number): readonly StepValue[];
}

/** Opens the look-ups of a checked file. Parameters are read when first asked for. */
export function modelOf(file: StepFile): IfcModel {
  const byType = new Map<string, number[]>();
  for (const type of file.types) byType.set(type, []);
  for (let i = 0; i < file.ids.length; i++) byType.get(file.types[file.typeOf[i]!]!)!.push(file.ids[i]!);
  const read = new Map<number, readonly StepValue[]>();
  return {
    file,
    ids: (...types) =>
      types.length === 1 ? (byType.get(types[0]!) ?? []) : types.flatMap((type) => byType.get(type) ?? []),
    type: (id) => {
      const index = file.indexOf.get(id);
      return index === undefined ? "" : file.types[file.typeOf[index]!]!;
    },
    values: (id) => {
      const known = read.get(id);
      if (known) return known;
      const index = file.indexOf.get(id);
      const values = index === undefined ? [] : parameters(file, index);
      read.set(id, values);
      return values;
    },
  };
}

/** A reference, or undefined. */
export const refOf = (value: StepValue | undefined): number | undefined =>
  value !== null && typeof value === "object" && "ref" in value ? value.ref : undefined;

/** All references of a list, or of a single reference. */
export const refsOf = (value: StepValue | undefined): readonly number[] => {
  if (Array.isArray(value)) return value.flatMap((item: StepValue) => refOf(item) ?? []);
  const one = refOf(value);
  return one === undefined ? [] : [one];
};

/** A number, also out of a typed value such as IFCLENGTHMEASURE(2.5). Not finite: undefined. */
export const numberOf = (value: StepValue | undefined): number | undefined => {
  if (typeof value === "number") return Number.isFinite(value) ? value : undefined;
  if (value !== null && typeof value === "object" && "type" in value) return numberOf(value.value);
  return undefined;
};

/** All numbers of a list. */
export const numbersOf = (value: StepValue | undefined): readonly number[] =>
  Array.isArray(value) ? value.flatMap((item: StepValue) => numberOf(item) ?? []) : [];

/** A text with blanks and line ends tidied, also out of a typed value; "" where not given. */
export const textOf = (value: StepValue | undefined): string => {
  // Control characters come out of escapes such as \X\0A and would break lists and tables.
  if (typeof value === "string") return value.replace(/[\p{Cc}\s]+/gu, " ").trim();
  if (value !== null && typeof value === "object" && "type" in value) return textOf(value.value);
  return "";
};

/** An enumeration's word in capitals; "" where not given. */
export const wordOf = (value: StepValue | undefined): string =>
  value !== null && typeof value === "object" && "word" in value ? value.word : "";
