import {
  type Check,
  distinct,
  english,
  joined,
  type Problem,
  type Said,
  type SaidValue,
  say,
  type Words,
} from "../../check/index.ts";
import type { BuiltWiring } from "./of-site.ts";

/** Names that a sentence lists before it only counts the rest. */
const MOST_NAMES = 6;

/**
 * Problems of a wiring in the words and records of the site, each said once.
 *
 * What lacks the same datum at the same thing is one note; what differs in the thing alone is one problem that names them all. What
 * is only not proven is gathered over all rooms. What rule W-05 says of joined contacts the checks of each contact say with figures, so
 * that one mistake stays one finding.
 *
 * @param built - The wiring with its model. @param problems - As the checks and rules gave them.
 * @returns Problems in the order in which they first came, with records of the job.
 * @example Eight luminaires of class I without protective conductor: one problem that names eight
 */
export function toldProblems(built: BuiltWiring, problems: readonly Problem[]): readonly Problem[] {
  const records = recordsOf(built);
  const cables = new Map(
    built.model.segments.map(({ id, circuit }) => [
      id,
      say`the cable of ${built.model.circuits.find((one) => one.id === circuit)?.name ?? circuit}`,
    ]),
  );
  const own = problems
    .filter(({ values }) => english(values.rule ?? "") !== "W-05")
    .map((problem): Problem => {
      const { name } = problem.values;
      return {
        ...(isOpen(problem) ? withoutRoom(problem) : problem),
        values: {
          ...problem.values,
          ...(name === undefined ? {} : { name: (typeof name === "string" && cables.get(name)) || name }),
        },
        records: [...new Set((problem.records ?? []).flatMap((id) => records.get(id) ?? [id]))],
        evidence: (problem.evidence ?? []).map(saidOnce),
      };
    });
  const whole = new Set([...cables.values()].map(english));
  return gathered(
    gathered(own, "what", (whats) => joined(distinct(whats), "; ")),
    "name",
    (names) => listed(names, whole),
  );
}

const isOpen = ({ code }: Problem): boolean =>
  code === "wiring-not-proven" || code === "wiring-rule-not-proven";

const withoutRoom = ({ room: _, ...problem }: Problem): Problem => problem;

const saidOnce = (check: Check): Check => ({ ...check, assumptions: distinct(check.assumptions) });

/** Problems that are the same but for one value, as one. "what" is gathered only where something is not proven. */
function gathered(
  problems: readonly Problem[],
  field: "name" | "what",
  join: (values: readonly Words[]) => Words,
): readonly Problem[] {
  const groups = new Map<string, { readonly problem: Problem; readonly values: Words[] }>();
  for (const [index, problem] of problems.entries()) {
    const value = problem.values[field];
    const { [field]: _, ...others } = problem.values;
    const alone = value === undefined || (field === "what" && problem.code !== "wiring-not-proven");
    const key = JSON.stringify(alone ? index : [problem.code, problem.room ?? "", others]);
    const group = groups.get(key);
    groups.set(key, {
      problem: group ? together(group.problem, problem) : problem,
      values: [...(group?.values ?? []), ...(value === undefined ? [] : [wordsOf(value)])],
    });
  }
  return [...groups.values()].map(({ problem, values }) =>
    values.length === 0 ? problem : { ...problem, values: { ...problem.values, [field]: join(values) } },
  );
}

const together = (one: Problem, other: Problem): Problem => ({
  ...one,
  records: [...new Set([...(one.records ?? []), ...(other.records ?? [])])],
  evidence:
    english(one.values.what ?? "") === english(other.values.what ?? "")
      ? (one.evidence ?? [])
      : [...(one.evidence ?? []), ...(other.evidence ?? [])],
});

/** "LED panel in G.14 Corridor (8) and 2 more": the same name is counted, cables are one thing however many lengths they have. */
function listed(names: readonly Words[], whole: ReadonlySet<string>): Words {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(english(name), (counts.get(english(name)) ?? 0) + 1);
  const told = distinct(names).map((name): Words => {
    const count = counts.get(english(name))!;
    if (count === 1 || whole.has(english(name))) return name;
    return typeof name === "string" ? `${name} (${count})` : joined([name, ` (${count})`], "");
  });
  const shown = told.length > MOST_NAMES ? told.slice(0, MOST_NAMES - 1) : told;
  const rest = told.length - shown.length;
  return inWords(rest > 0 ? [...shown, say`${rest} more`] : shown);
}

/** A common ending in brackets, the board of several circuits, is said once. */
function inWords(names: readonly Words[]): Words {
  const [first] = names;
  const ending = first === undefined ? undefined : / \([^()]*\)$/.exec(lastNameOf(first))?.[0];
  const shared =
    ending !== undefined && names.length > 1 && names.every((name) => lastNameOf(name).endsWith(ending));
  const bare = shared ? names.map((name) => withoutEnding(name, ending)) : names;
  const last = bare.at(-1) ?? "";
  const all = bare.length < 2 ? last : say`${joined(bare.slice(0, -1), ", ")} and ${last}`;
  return shared ? joined([all, ending], "") : all;
}

/** What a name ends with that somebody gave: its board stands there. */
function lastNameOf(name: Words): string {
  if (typeof name === "string") return name;
  const last = valuesOf(name).at(-1);
  return typeof last === "string" && name.text.endsWith(`{${valuesOf(name).length - 1}}`) ? last : "";
}

const withoutEnding = (name: Words, ending: string): Words =>
  typeof name === "string"
    ? name.slice(0, -ending.length)
    : { ...name, values: [...valuesOf(name).slice(0, -1), lastNameOf(name).slice(0, -ending.length)] };

const valuesOf = ({ values }: Said): readonly SaidValue[] => (isList(values) ? values : []);

const isList = (values: Said["values"]): values is readonly SaidValue[] => Array.isArray(values);

const wordsOf = (value: SaidValue): Words =>
  typeof value === "string"
    ? value
    : typeof value === "object" && "text" in value
      ? value
      : joined([value], "");

/** Ids of the model that are no records of the job, with the records that they stand for. */
const recordsOf = ({ model }: BuiltWiring): ReadonlyMap<string, readonly string[]> =>
  new Map<string, readonly string[]>([
    ...model.segments.map(({ id, circuit }) => [id, [circuit]] as const),
    ...model.circuits.map(({ id, device }) => [device, [id]] as const),
    ...model.contactors.map(({ id, main }) => [id, [main.circuit]] as const),
    ...model.switchedLines.map(
      ({ id }) => [id, model.detectors.filter(({ output }) => output === id).map((one) => one.id)] as const,
    ),
  ]);
