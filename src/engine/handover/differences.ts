import type { Metres } from "../quantity/index.ts";
import {
  type HandedFact,
  type HandedKind,
  type HandedRecord,
  type HandedState,
  handedKinds,
} from "./handed-state.ts";

/** One fact that is otherwise than it was; undefined: not known on that side. */
export interface FactChange {
  readonly fact: string;
  readonly before: HandedFact | undefined;
  readonly after: HandedFact | undefined;
}

/** What became of one record since it was handed over. */
export type Difference = {
  readonly kind: HandedKind;
  readonly id: string;
  /** The record as it is now; as it was where it is gone. */
  readonly record: HandedRecord;
} & (
  | { readonly what: "added" | "removed" }
  | {
      readonly what: "changed";
      /** How far it moved in plan; undefined: it stands where it stood. [m] */
      readonly moved: Metres | undefined;
      readonly changes: readonly FactChange[];
    }
);

/**
 * What differs between two states that were handed over: added, removed, moved, set otherwise.
 *
 * @param before - The earlier state. @param after - The later one.
 * @returns One difference for each record that differs, by kind, then by name; nothing between a state and itself.
 * @source COMMON-PRACTICE
 * @example A detector 0.4 m farther along: "changed", moved 0.4, with its place before and after
 */
export function differencesOf(before: HandedState, after: HandedState): readonly Difference[] {
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return keys
    .flatMap((key): readonly Difference[] => {
      const [kind, id] = partsOf(key);
      if (kind === undefined) return [];
      const [was, is] = [before[key], after[key]];
      if (!was || !is) {
        const record = (is ?? was) as HandedRecord;
        return [{ kind, id, record, what: was ? "removed" : "added" }];
      }
      const changes = changesOf(was, is);
      if (changes.length === 0) return [];
      return [{ kind, id, record: is, what: "changed", moved: movedBy(changes), changes }];
    })
    .toSorted(
      (a, b) =>
        handedKinds.indexOf(a.kind) - handedKinds.indexOf(b.kind) ||
        inOrder(nameIn(a), nameIn(b)) ||
        inOrder(a.id, b.id),
    );
}

/**
 * What a record is called: its tag, its title or its name; its kind where it has none of them.
 *
 * @param difference - What became of it. @returns A name for a sentence; "" where only its kind can name it.
 * @example A detector: its tag, "B1.01"
 */
export function nameIn(difference: Pick<Difference, "record">): string {
  const { record } = difference;
  const name = record.tag ?? record.title ?? record.name ?? record.between;
  return typeof name === "string" ? name : "";
}

function partsOf(key: string): readonly [HandedKind | undefined, string] {
  const cut = key.indexOf("/");
  const kind = handedKinds.find((one) => one === key.slice(0, cut));
  return [kind, key.slice(cut + 1)];
}

function changesOf(before: HandedRecord, after: HandedRecord): readonly FactChange[] {
  const facts = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return facts
    .filter((fact) => !alike(before[fact], after[fact]))
    .map((fact) => ({ fact, before: before[fact], after: after[fact] }));
}

function movedBy(changes: readonly FactChange[]): Metres | undefined {
  const at = changes.find(({ fact }) => fact === "at");
  if (!isPlace(at?.before) || !isPlace(at.after)) return undefined;
  return Math.hypot(at.after[0] - at.before[0], at.after[1] - at.before[1]);
}

/** Whether a fact is a place in the plan. @param fact - Any fact. @example isPlace([1, 2]) is true */
export const isPlace = (fact: HandedFact | undefined): fact is readonly [number, number] =>
  Array.isArray(fact);

const alike = (a: HandedFact | undefined, b: HandedFact | undefined): boolean =>
  isPlace(a) && isPlace(b) ? a[0] === b[0] && a[1] === b[1] : a === b;

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
