import type { z } from "zod";
import { joined, type Said, say, type Words } from "#engine";

/** What a schema found wrong, as the end of a sentence that names the field: `ceilingHeight must be a number, not “2,7”`. */
export function reasonOf(issue: z.core.$ZodIssue, raw: unknown): Said {
  const field = fieldName(issue.path);
  const demand = demandOf(issue, valueAt(raw, issue.path));
  return field === "" ? demand : joined([field, demand], " ");
}

/** A path as a person finds it in the file. @example ["outline", 2, 0] → outline[2][0] */
export const fieldName = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (name, step) =>
      typeof step === "number" ? `${name}[${step}]` : name ? `${name}.${String(step)}` : String(step),
    "",
  );

function demandOf(issue: z.core.$ZodIssue, found: unknown): Said {
  switch (issue.code) {
    case "invalid_type":
      return found === undefined
        ? say`is missing (${named(issue.expected)})`
        : say`must be ${named(issue.expected)}, not ${shown(found)}`;
    case "invalid_value": {
      const values = issue.values.map(String).join(", ");
      return found === undefined
        ? say`is missing (one of ${values})`
        : say`must be one of ${values}, not ${shown(found)}`;
    }
    case "too_small":
      return issue.origin === "number"
        ? overLeast(Number(issue.minimum), issue.inclusive)(shown(found))
        : issue.origin === "string"
          ? say`must have at least ${Number(issue.minimum)} characters`
          : say`must have at least ${Number(issue.minimum)} entries`;
    case "too_big":
      return issue.origin === "number"
        ? underMost(Number(issue.maximum), issue.inclusive)(shown(found))
        : issue.origin === "string"
          ? say`must have at most ${Number(issue.maximum)} characters`
          : say`must have at most ${Number(issue.maximum)} entries`;
    case "invalid_union":
      return say`fits none of the forms that are known here`;
    default:
      return say`is not as it should be (${issue.message})`;
  }
}

const overLeast =
  (least: number, inclusive: boolean | undefined) =>
  (found: Words): Said =>
    inclusive === false
      ? say`must be more than ${least}, not ${found}`
      : say`must be at least ${least}, not ${found}`;

const underMost =
  (most: number, inclusive: boolean | undefined) =>
  (found: Words): Said =>
    inclusive === false
      ? say`must be less than ${most}, not ${found}`
      : say`must be at most ${most}, not ${found}`;

const names: Readonly<Record<string, Said>> = {
  number: say`a number`,
  int: say`a whole number`,
  string: say`text`,
  boolean: say`true or false`,
  array: say`a list`,
  tuple: say`a list of two`,
  object: say`an object`,
};
const named = (expected: string): Words => names[expected] ?? expected;

/** A wrong value, short enough for a sentence. */
export function shown(value: unknown): Words {
  if (typeof value === "string") return quoted(value);
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (value === undefined) return say`nothing`;
  return Array.isArray(value) ? say`a list of ${value.length}` : say`an object`;
}

/** A text as it stands in the file. */
export const quoted = (text: string): string => `“${shortened(text)}”`;

/** A text, its beginning if it is long. */
export const shortened = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** What a record is called, whatever stands in it; undefined where nothing in it is a name. */
export function nameOfRecord(raw: unknown): string | undefined {
  const given = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>) : {};
  return [given.name, given.tag, given.title, given.id].find(
    (value): value is string => typeof value === "string" && value !== "",
  );
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const step of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}
