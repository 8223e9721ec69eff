import {
  english,
  type FoundInstallation,
  joined,
  type Site,
  say,
  type WiringModel,
  type Words,
} from "#engine";

/** Reference designations of everything in a wiring by the id of its record: class letter and number, + before a location. */
export interface Designations {
  readonly of: (id: string) => Words;
  /** The residual current device of a protective device; undefined where there is none or nobody knows. */
  readonly rcdOf: (device: string) => string | undefined;
  /** "E1–E8, E11" for many. */
  readonly ofAll: (ids: readonly string[]) => Words;
}

/**
 * Designations in the order of the records, so that the same job gives the same names on every paper. Detectors keep their tags.
 *
 * @example The third circuit's breaker is F3, its board +A1, its first luminaire E1 if no circuit before it has any
 */
export function designations(
  site: Site,
  found: FoundInstallation,
  model: Pick<WiringModel, "devices" | "loads" | "contactors">,
): Designations {
  const names = new Map<string, string>();
  for (const [i, board] of found.boards.entries()) names.set(board.id, `+A${i + 1}`);
  for (const [i, device] of model.devices.entries()) names.set(device.id, `F${i + 1}`);
  for (const [i, load] of model.loads.entries()) names.set(load.id, `E${i + 1}`);
  for (const [i, one] of site.switches.entries()) names.set(one.id, `S${i + 1}`);
  for (const [i, one] of model.contactors.entries()) names.set(one.id, `Q${i + 1}`);
  for (const one of site.detectors) names.set(one.id, one.tag || one.id);
  // RCDs are numbered after the breakers: a circuit that gets one later renames no breaker.
  const rcds = new Map<string, string>();
  for (const { rcd } of model.devices)
    if (rcd !== undefined && rcd !== "none" && !rcds.has(rcd.id))
      rcds.set(rcd.id, `F${model.devices.length + rcds.size + 1}`);
  const of = (id: string): Words => names.get(id) ?? say`unknown`;
  return {
    of,
    rcdOf: (id) => {
      const rcd = model.devices.find((device) => device.id === id)?.rcd;
      return rcd === undefined || rcd === "none" ? undefined : rcds.get(rcd.id);
    },
    ofAll: (ids) => ranges(ids.map(of)),
  };
}

/** Neighbours in number as a range, upwards or downwards. @example E1, E2, E3, E7 → "E1–E3, E7" */
export function ranges(names: readonly string[]): string;
export function ranges(names: readonly Words[]): Words;
export function ranges(names: readonly Words[]): Words {
  const parsed = names.map((name) => {
    const match = typeof name === "string" ? /^(.*?)(\d+)$/.exec(name) : null;
    return { name, stem: match?.[1] ?? english(name), number: match ? Number(match[2]) : Number.NaN };
  });
  const runs: { readonly members: Words[]; stem: string; last: number; step: number }[] = [];
  for (const { name, stem, number } of parsed) {
    const run = runs.at(-1);
    const step = run ? number - run.last : Number.NaN;
    if (run && run.stem === stem && Math.abs(step) === 1 && (run.step === 0 || run.step === step)) {
      run.members.push(name);
      run.last = number;
      run.step = step;
    } else runs.push({ members: [name], stem, last: number, step: 0 });
  }
  const parts = runs.flatMap(({ members }) =>
    members.length > 2 ? [joined([members[0]!, members.at(-1)!], "–")] : members,
  );
  // Names alone are the same in every language.
  return names.every((name) => typeof name === "string")
    ? parts.map(english).join(", ")
    : joined(parts, ", ");
}
