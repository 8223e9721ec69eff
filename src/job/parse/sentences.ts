import type { z } from "zod";

/** What a schema found wrong, as the end of a sentence that names the field: `ceilingHeight must be a number, not “2,7”`. */
export function reasonOf(issue: z.core.$ZodIssue, raw: unknown): string {
  const field = fieldName(issue.path);
  const found = valueAt(raw, issue.path);
  return `${field} ${demandOf(issue, found)}`.trim();
}

/** A path as a person finds it in the file. @example ["outline", 2, 0] → outline[2][0] */
export const fieldName = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (name, step) =>
      typeof step === "number" ? `${name}[${step}]` : name ? `${name}.${String(step)}` : String(step),
    "",
  );

function demandOf(issue: z.core.$ZodIssue, found: unknown): string {
  switch (issue.code) {
    case "invalid_type":
      return found === undefined
        ? `is missing (${named(issue.expected)})`
        : `must be ${named(issue.expected)}, not ${shown(found)}`;
    case "invalid_value":
      return found === undefined
        ? `is missing (one of ${issue.values.map(String).join(", ")})`
        : `must be one of ${issue.values.map(String).join(", ")}, not ${shown(found)}`;
    case "too_small":
      return issue.origin === "number"
        ? `must be ${issue.inclusive === false ? "more than" : "at least"} ${issue.minimum}, not ${shown(found)}`
        : `must have at least ${issue.minimum} ${issue.origin === "string" ? "characters" : "entries"}`;
    case "too_big":
      return issue.origin === "number"
        ? `must be ${issue.inclusive === false ? "less than" : "at most"} ${issue.maximum}, not ${shown(found)}`
        : `must have at most ${issue.maximum} ${issue.origin === "string" ? "characters" : "entries"}`;
    case "invalid_union":
      return "fits none of the forms that are known here";
    default:
      return `is not as it should be (${issue.message})`;
  }
}

const names: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list of two",
  object: "an object",
};
const named = (expected: string): string => names[expected] ?? expected;

/** A wrong value, short enough for a sentence. */
export function shown(value: unknown): string {
  if (typeof value === "string") return `“${value.length > 40 ? `${value.slice(0, 40)}…` : value}”`;
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (value === undefined) return "nothing";
  return Array.isArray(value) ? `a list of ${value.length}` : "an object";
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const step of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}
