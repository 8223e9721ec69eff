import type { Site } from "#engine";
import type { EditStep, RecordKind } from "../contract.ts";

type Any = { readonly id: string };

/** Kinds of record in the order in which the snapshot lists them. */
export const recordKinds = [
  "storeys",
  "rooms",
  "floorPieces",
  "openings",
  "obstacles",
  "dwellPlaces",
  "interference",
  "ceilingThings",
  "luminaires",
  "switches",
  "models",
  "detectors",
] as const satisfies readonly RecordKind[];

/** The snapshot after the steps; records that are not touched keep their identity. */
export function applied(site: Site, steps: readonly EditStep[]): Site {
  if (steps.length === 0) return site;
  const changed: Partial<Record<RecordKind, Any[]>> = {};
  for (const step of steps) {
    changed[step.kind] ??= [...(site[step.kind] as readonly Any[])];
    const list = changed[step.kind] as Any[];
    const id = step.do === "put" ? step.record.id : step.id;
    const index = list.findIndex((record) => record.id === id);
    if (step.do === "put") {
      if (index < 0) list.push(step.record);
      else list[index] = step.record;
    } else if (step.do === "set") {
      if (index >= 0) list[index] = withFields(list[index] as Any, step.fields);
    } else if (index >= 0) list.splice(index, 1);
  }
  return { ...site, ...changed } as Site;
}

/** A field that is set to undefined is taken away. */
function withFields(record: Any, fields: object): Any {
  const next: Record<string, unknown> = { ...record, ...fields };
  for (const key of Object.keys(next)) if (next[key] === undefined) delete next[key];
  return next as unknown as Any;
}

/** Steps that lead from one snapshot to another; compares records by identity, so it is quick. */
export function difference(from: Site, to: Site): EditStep[] {
  const steps: EditStep[] = [];
  for (const kind of recordKinds) {
    const before = from[kind] as readonly Any[];
    const after = to[kind] as readonly Any[];
    if (before === after) continue;
    const known = new Map(before.map((record) => [record.id, record]));
    for (const record of after) {
      if (known.get(record.id) !== record) steps.push({ do: "put", kind, record } as EditStep);
      known.delete(record.id);
    }
    for (const id of known.keys()) steps.push({ do: "remove", kind, id });
  }
  return steps;
}
