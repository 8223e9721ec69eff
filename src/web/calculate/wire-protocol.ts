import type {
  DerivedCircuit,
  Finding,
  FoundInstallation,
  GroupChoice,
  Point,
  Site,
  WiringReview,
} from "#engine";

/** To the worker that calculates the wiring of the open job. */
export interface WireQuestion {
  readonly site: Site;
  readonly found: FoundInstallation;
  /** Ways and sections of cables as well, which take most of the time; without them only findings and what hangs on each circuit. */
  readonly routes: boolean;
}

/** What hangs on a circuit, known or taken for granted. */
export interface OnCircuit {
  readonly luminaires: readonly string[];
  readonly detectors: readonly string[];
  /** What follows for its cable from the plan, where nobody has decided. */
  readonly derived?: Pick<DerivedCircuit, "section"> & {
    /** From the board to the last device along the route; undefined where the board has no place. [m] */
    readonly toLast: number | undefined;
  };
}

/** Lines that join what belongs together on one storey. */
export interface Run {
  /** feeds: on one circuit · switches: from detectors to what they switch. */
  readonly kind: "feeds" | "switches";
  /** Circuit that it belongs to; for what is switched, that of the detector where it is known. */
  readonly circuit: string | undefined;
  readonly storey: string;
  readonly lines: readonly (readonly Point[])[];
  /** What each line joins, where it is a cable of a route: board or device first, as the line runs. */
  readonly ends?: readonly { readonly from: string; readonly to: string }[];
}

/** All that the screen knows of the wiring. */
export interface WiringKnown {
  /** Undefined where nothing of the wiring is on record. */
  readonly review: WiringReview | undefined;
  /** In reading order; those of a circuit name its luminaires too, and have a place on the plan. */
  readonly findings: readonly Finding[];
  readonly circuits: ReadonlyMap<string, OnCircuit>;
  readonly runs: readonly Run[];
  /** How the luminaires of each switched line are best switched. */
  readonly groups: readonly GroupChoice[];
}
