import type * as Y from "yjs";
import { type RecordKind, recordKinds } from "../schema/job-file.ts";
import type { JobPlanning } from "../schema/planning.ts";

/**
 * How a job lies in its Yjs document.
 *
 *   head      name, version, and fields at the top of the file that this version does not know
 *   details   one entry per field
 *   visit     one entry per field
 *   planning  one entry per number, "margin.seated": two people who change two numbers keep both
 *   <kind>    id → map of fields; an outline, a mask list, a zone table is one value
 *
 * A record's place in its list is one more field, `#place`, which never reaches the file.
 */
export interface Shape {
  readonly head: Y.Map<unknown>;
  readonly details: Y.Map<unknown>;
  readonly visit: Y.Map<unknown>;
  readonly planning: Y.Map<unknown>;
  readonly records: { readonly [Kind in RecordKind]: Y.Map<Y.Map<unknown>> };
}

export const placeField = "#place";

export function shapeOf(ydoc: Y.Doc): Shape {
  return {
    head: ydoc.getMap("head"),
    details: ydoc.getMap("details"),
    visit: ydoc.getMap("visit"),
    planning: ydoc.getMap("planning"),
    records: Object.fromEntries(
      recordKinds.map((kind) => [kind, ydoc.getMap<Y.Map<unknown>>(kind)]),
    ) as Shape["records"],
  };
}

/** Everything that undo watches. */
export const partsOf = (shape: Shape): Y.Map<unknown>[] => [
  shape.head,
  shape.details,
  shape.visit,
  shape.planning,
  ...(Object.values(shape.records) as Y.Map<unknown>[]),
];

/** Planning numbers as entries of the document. @example { margin: { seated: 0.3 } } → ["margin.seated", 0.3] */
export function planningEntries(planning: JobPlanning): readonly (readonly [string, unknown])[] {
  return Object.entries(planning).flatMap(([name, value]): (readonly [string, unknown])[] =>
    typeof value === "object" && value !== null
      ? Object.entries(value)
          .filter(([, inner]) => inner !== undefined)
          .map(([inner, number]) => [`${name}.${inner}`, number] as const)
      : value === undefined
        ? []
        : [[name, value] as const],
  );
}

/** The reverse of `planningEntries`. */
export function planningFrom(entries: Iterable<readonly [string, unknown]>): JobPlanning {
  const planning: Record<string, unknown> = {};
  for (const [path, value] of [...entries].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const [name, inner] = path.split(".", 2) as [string, string | undefined];
    if (inner === undefined) planning[name] = value;
    else planning[name] = { ...(planning[name] as object | undefined), [inner]: value };
  }
  return planning as JobPlanning;
}
