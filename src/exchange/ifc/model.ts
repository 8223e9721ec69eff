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
  const idsOf: number[][] = file.types.map(() => []);
  for (let i = 0; i < file.ids.length; i++) idsOf[file.typeOf[i]!]!.push(file.ids[i]!);
  const byType = new Map(file.types.map((type, index) => [type, idsOf[index]!]));
  const read: (readonly StepValue[] | undefined)[] = new Array(file.ids.length);
  return {
    file,
    ids: (...types) =>
      types.length === 1 ? (byType.get(types[0]!) ?? []) : types.flatMap((type) => byType.get(type) ?? []),
    type: (id) => {
      const index = file.indexOf.get(id);
      return index === undefined ? "" : file.types[file.typeOf[index]!]!;
    },
    values: (id) => {
      const index = file.indexOf.get(id);
      if (index === undefined) return [];
      read[index] ??= parameters(file, index);
      return read[index];
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

/** Whether a text is of plain letters with single blanks between: nearly all are, and need no tidying. */
const isTidy = (text: string): boolean => {
  let before = blank;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < blank || c >= 127 || (c === blank && before === blank)) return false;
    before = c;
  }
  return before !== blank;
};
const blank = 32;

/** A text with blanks and line ends tidied, also out of a typed value; "" where not given. */
export const textOf = (value: StepValue | undefined): string => {
  // Control characters come out of escapes such as \X\0A and would break lists and tables.
  if (typeof value === "string") return isTidy(value) ? value : value.replace(/[\p{Cc}\s]+/gu, " ").trim();
  if (value !== null && typeof value === "object" && "type" in value) return textOf(value.value);
  return "";
};

/** An enumeration's word in capitals; "" where not given. */
export const wordOf = (value: StepValue | undefined): string =>
  value !== null && typeof value === "object" && "word" in value ? value.word : "";
