import type { Advice, FoundReach, SettingGrade, Site, StationReading, WalkTest } from "#engine";

/** To the worker that weighs what a walk test has found. */
export interface FoundQuestion {
  readonly site: Site;
  readonly test: WalkTest;
  readonly readings: readonly StationReading[];
  /** As set, by detector. */
  readonly sensitivity: ReadonlyMap<string, SettingGrade>;
  /** As measured when they were fitted, by detector. [m] */
  readonly heights: ReadonlyMap<string, number>;
  /** Air in the room on the day of the test. [°C] */
  readonly ambient?: number;
}

/** Reach as found, and what can be done about it. */
export interface FoundAnswer {
  readonly reach: readonly FoundReach[];
  readonly advice: readonly Advice[];
}
