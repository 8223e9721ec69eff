import type { Point, Site, Verdict, WalkTest } from "#engine";

/** To the worker that plans walk tests: one room. */
export interface WalkQuestion {
  readonly site: Site;
  readonly room: string;
  readonly extent: "short" | "full";
}

/** A walk test as planned, with how much of it was asked for. */
export interface PlannedWalk {
  readonly extent: WalkQuestion["extent"];
  readonly test: WalkTest;
}

/** Walk tests of one plan. */
export interface Walks {
  /** The plan that they belong to. */
  readonly of: Site | undefined;
  readonly rooms: ReadonlyMap<string, PlannedWalk>;
  /** The station that one is at. */
  readonly station: string | undefined;
  /** How the plan shows the room that is being walked. */
  readonly marks: WalkMarks | undefined;
}

/** What the plan shows of the walk test of a room. */
export interface WalkMarks {
  readonly storey: string;
  readonly stations: readonly WalkMark[];
}

export interface WalkMark {
  readonly number: number;
  readonly path: readonly Point[];
  readonly verdict: Verdict;
  /** One is there now. */
  readonly current: boolean;
  /** It is walked both ways. */
  readonly back: boolean;
}
