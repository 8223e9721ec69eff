import type { FaultCause, FaultCorrection, FaultPlace, FoundInstallation, PlanFact, Site } from "#engine";

/** To the worker that looks at the plan of a room with a complaint. */
export interface FaultQuestion {
  readonly site: Site;
  readonly room: string;
  readonly found: FoundInstallation;
  /** As planned, by detector. */
  readonly settings: FaultPlace["settings"];
}

/** What the plan says of it, and what would mend each cause. */
export interface FaultAnswer {
  readonly facts: readonly PlanFact[];
  readonly corrections: ReadonlyMap<FaultCause, readonly FaultCorrection[]>;
}
