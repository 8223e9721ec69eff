import { headSchemas, type JobFile, recordKinds } from "../schema/job-file.ts";

/** Longest line that still reads well beside a sketch. */
const lineWidth = 112;

/**
 * A job as the text of its file: stable, so that two saves of one job are the same bytes, and readable, with a point on one line.
 *
 * @param job - The job to save.
 * @returns JSON text that ends with a line break.
 */
export function jobText(job: JobFile): string {
  const fields = job as unknown as Readonly<Record<string, unknown>>;
  const known = [...Object.keys(headSchemas), ...recordKinds];
  const extras = Object.keys(fields)
    .filter((name) => !known.includes(name))
    .sort();
  const ordered = Object.fromEntries(
    [...known, ...extras].filter((name) => fields[name] !== undefined).map((name) => [name, fields[name]]),
  );
  return `${printed(ordered, 0, "spread")}\n`;
}

function printed(value: unknown, depth: number, top?: "spread"): string {
  if (typeof value !== "object" || value === null) return scalar(value);
  const pad = " ".repeat(depth + 1);
  if (top === undefined) {
    const line = oneLine(value);
    if (line !== undefined && line.length + depth <= lineWidth) return line;
  }
  if (Array.isArray(value)) {
    const parts = value.map((part) => printed(part, depth + 1));
    return `[\n${parts.map((part) => pad + part).join(",\n")}\n${" ".repeat(depth)}]`;
  }
  const parts = entriesOf(value).map(
    ([name, part]) => `${JSON.stringify(name)}: ${printed(part, depth + 1)}`,
  );
  return `{\n${parts.map((part) => pad + part).join(",\n")}\n${" ".repeat(depth)}}`;
}

/** The value on one line, or undefined where it is certainly too long. */
function oneLine(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return scalar(value);
  const parts: string[] = [];
  let total = 2;
  const entries: [string, unknown][] = Array.isArray(value)
    ? value.map((part): [string, unknown] => ["", part])
    : entriesOf(value).map(([name, part]): [string, unknown] => [`${JSON.stringify(name)}: `, part]);
  for (const [label, part] of entries) {
    const line = oneLine(part);
    if (line === undefined) return undefined;
    parts.push(label + line);
    total += label.length + line.length + 2;
    if (total > lineWidth + 2) return undefined;
  }
  if (Array.isArray(value)) return `[${parts.join(", ")}]`;
  return parts.length === 0 ? "{}" : `{ ${parts.join(", ")} }`;
}

const entriesOf = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, part]) => part !== undefined);

const scalar = (value: unknown): string => {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new Error("A job holds finite numbers only");
  return JSON.stringify(value) ?? "null";
};
