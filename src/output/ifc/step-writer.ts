/** A value of a STEP record: a reference to another record by its number, an enumeration's word, a typed value. */
export type StepValue = number | string | null | StepRef | StepWord | StepTyped | readonly StepValue[];

export interface StepRef {
  readonly ref: number;
}
export interface StepWord {
  readonly word: string;
}
export interface StepTyped {
  readonly type: string;
  readonly value: StepValue;
}

/** Takes records one by one, numbers them, and gives the text of the file. */
export interface StepWriter {
  readonly add: (type: string, ...values: readonly StepValue[]) => StepRef;
  readonly text: (head: StepHead) => string;
  /** The records alone, as they stand in a file. */
  readonly records: () => string;
}

export interface StepHead {
  readonly schema: string;
  readonly view: string;
  readonly name: string;
  /** Date and time as ISO 8601 has it. */
  readonly stamp: string;
  readonly author: string;
}

export const word = (name: string): StepWord => ({ word: name });
export const typed = (type: string, value: StepValue): StepTyped => ({ type, value });
/** A whole number; every other number is written as a real one. */
export const whole = (value: number): StepTyped => ({ type: "", value: Math.round(value) });
/** An attribute that a supertype leaves to be derived. */
export const derived: StepWord = { word: "*" };

/**
 * A STEP physical file, or records to be added to one.
 *
 * @param taken - The highest instance name that is taken already.
 * @source ISO-10303-21
 */
export function stepWriter(taken = 0): StepWriter {
  const lines: string[] = [];
  return {
    add: (type, ...values) => {
      const ref = taken + lines.length + 1;
      lines.push(`#${ref}=${type}(${values.map(valueText).join(",")});`);
      return { ref };
    },
    records: () => lines.join("\n"),
    text: (head) =>
      [
        "ISO-10303-21;",
        "HEADER;",
        `FILE_DESCRIPTION((${literal(head.view)}),'2;1');`,
        `FILE_NAME(${[head.name, head.stamp].map(literal).join(",")},(${literal(head.author)}),(''),'','Roomwake','');`,
        `FILE_SCHEMA((${literal(head.schema)}));`,
        "ENDSEC;",
        "DATA;",
        ...lines,
        "ENDSEC;",
        "END-ISO-10303-21;",
        "",
      ].join("\n"),
  };
}

function valueText(value: StepValue): string {
  if (value === null) return "$";
  if (typeof value === "number") return real(value);
  if (typeof value === "string") return literal(value);
  if (Array.isArray(value)) return `(${value.map(valueText).join(",")})`;
  const one = value as StepRef | StepWord | StepTyped;
  if ("ref" in one) return `#${one.ref}`;
  if ("word" in one) return one.word === "*" ? "*" : `.${one.word}.`;
  return one.type === "" ? String(one.value) : `${one.type}(${valueText(one.value)})`;
}

/** Tenths of a micrometre: below what any length here means, so that sums of decimals come out short. */
function real(value: number): string {
  const text = String(Math.round(value * 1e7) / 1e7 + 0).toUpperCase();
  return text.includes(".") ? text : text.replace(/^-?\d+/, "$&.");
}

/** Quotes and backslashes are doubled; what is not plain ASCII is written as its UTF-16 units between \X2\ and \X0\. */
const literal = (text: string): string =>
  `'${text
    .replace(/[\\']/g, "$&$&")
    .replace(
      /[^\x20-\x7e]+/g,
      (run) =>
        `\\X2\\${[...Array(run.length).keys()]
          .map((i) => run.charCodeAt(i).toString(16).toUpperCase().padStart(4, "0"))
          .join("")}\\X0\\`,
    )}'`;
