import type { Site, WalkTest } from "#engine";

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
}
