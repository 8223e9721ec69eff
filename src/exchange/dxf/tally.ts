import { english, type Said, say, type Words } from "#engine";
import type { LeftOut } from "../survey.ts";

/** Counts entities: those that were read, by type, and those that were left out, by type and reason. */
export interface Tally {
  read(type: string, count?: number): void;
  leftOut(type: Words, why: Words, count?: number): void;
  /** Adds all counts of another tally. */
  add(other: Tally): void;
  readonly counts: ReadonlyMap<string, number>;
  readonly reasons: ReadonlyMap<string, LeftOut>;
}

/** Types are data of the file: a file of nonsense must not fill memory with names. */
const mostTypes = 500;

/** A new tally, all counts 0. */
export function tally(): Tally {
  const counts = new Map<string, number>();
  const reasons = new Map<string, LeftOut>();
  const own: Tally = {
    counts,
    reasons,
    read: (type, count = 1) => {
      counts.set(type, (counts.get(type) ?? 0) + count);
    },
    leftOut: (type, why, count = 1) => {
      const what = reasons.size < mostTypes ? type : say`further`;
      const key = `${english(what)}\u0000${english(why)}`;
      reasons.set(key, { what, why, count: (reasons.get(key)?.count ?? 0) + count });
    },
    add: (other) => {
      for (const [type, count] of other.counts) own.read(type, count);
      for (const { what, why, count } of other.reasons.values()) own.leftOut(what, why, count);
    },
  };
  return own;
}

/** Why entities that could be read are left out. */
export const because = {
  noPlace: say`its coordinates are missing, no numbers, or beyond any plan`,
  noLength: say`seen from above it is a point`,
  paper: say`it lies on a sheet of paper, not in the model`,
  hidden: say`it is switched off`,
} as const;

/** Why entities of these types are never read. */
const unread: readonly (readonly [RegExp, Said])[] = [
  [/DIMENSION|LEADER|TOLERANCE/, say`dimensions and their leaders are no part of the building`],
  [/^WIPEOUT$/, say`it covers what lies below and has no line of its own`],
  [/^VIEWPORT$/, say`it is a window of a sheet of paper`],
  [/IMAGE|UNDERLAY|OLE/, say`pictures are not read`],
  [/SOLID|^BODY$|^REGION$|SURFACE|^MESH$/, say`solid bodies and meshes are not read`],
  [/^ATTDEF$/, say`it is a form for attributes and is not shown`],
  [/^POINT$/, say`a point has no line`],
  [/^(XLINE|RAY)$/, say`it has no end`],
];

/** Why an entity of a type is not read. */
export const whyUnread = (type: string): Said =>
  unread.find(([pattern]) => pattern.test(type))?.[1] ?? say`things of this type are not read`;
