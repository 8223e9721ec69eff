import type { Problem } from "../check/index.ts";
import type { DarkWalk, Gap } from "../coverage/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Metres, Seconds, SquareMetres } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";

/** Weighted set cover with pairwise conflicts: choose columns at least cost so that every row is covered and no two conflicting columns are both taken. */
export interface CoverModel {
  readonly costs: readonly number[];
  /** For each row the columns that cover it. */
  readonly rows: readonly (readonly number[])[];
  readonly conflicts: readonly (readonly [number, number])[];
  /** Columns that must be taken. */
  readonly fixed: readonly number[];
}

export interface SolverAnswer {
  readonly status: "optimal" | "feasible" | "infeasible" | "stopped";
  /** Chosen columns of the best solution known. */
  readonly chosen?: readonly number[];
  readonly cost?: number;
  /** Proven lower bound on the cost. */
  readonly bound: number;
}

/** Bound from the linear relaxation, with the price of each row that proves it. */
export interface RelaxationAnswer {
  readonly bound: number;
  /** Dual value of each row, never negative; anyone can recompute the bound from them. */
  readonly prices: readonly number[];
  /** Columns that the relaxation takes by more than a half: something to begin from. */
  readonly most: readonly number[];
}

/** The MILP solver as placement needs it; `solver/` implements it and nothing else knows its name. */
export interface CoverSolver {
  /** `stop` is polled now and then during the solve; a bound nearer to the cost than the gap is near enough. */
  solve(
    model: CoverModel,
    options: {
      readonly seconds: Seconds;
      readonly start?: readonly number[];
      readonly stop?: () => boolean;
      readonly gap?: number;
    },
  ): Promise<SolverAnswer>;
  /** Linear relaxation; undefined where it did not finish. */
  relax(model: CoverModel, options: { readonly seconds: Seconds }): Promise<RelaxationAnswer | undefined>;
}

/** Time, cancellation and progress come from outside. */
export interface PlacementWorld {
  readonly solver: CoverSolver;
  /** Seconds since any fixed moment. */
  readonly now: () => Seconds;
  readonly cancelled: () => boolean;
  readonly progress: (step: PlacementProgress) => void;
  /** Lets the host breathe (messages, cancel) between slices of work. */
  readonly breathe: () => Promise<void>;
}

export interface PlacementProgress {
  readonly room: string;
  readonly phase: "candidates" | "search" | "bound" | "check" | "quality" | "done";
  /** Devices of the best complete layout so far. */
  readonly best?: number;
  readonly bound?: number;
  readonly share: number;
}

export interface PlacementOptions {
  readonly room: string;
  /** Ids of the models that may be used; all suitable ones if absent. */
  readonly models?: readonly string[];
  readonly seconds: Seconds;
  readonly seed: number;
  /** Bound over the candidates only, or over any allowed position. */
  readonly bound: "candidates" | "any-position";
  readonly alternatives: number;
  /** Given places instead of the ceiling grid or the free grid. [m] */
  readonly points?: readonly Point[];
}

export interface Layout {
  readonly devices: readonly Detector[];
  readonly cost: number;
  readonly gaps: readonly Gap[];
  readonly darkWalks: readonly DarkWalk[];
  /** What it is good at, as data for a sentence. */
  readonly traits: {
    /** [m] */
    readonly worstDarkWalk: Metres;
    /** Seen of other rooms and of outside with the doors open. [m²] */
    readonly spillArea: SquareMetres;
    /** Reach left beyond the demand's tightest place, after the planning margin. [m] */
    readonly leastMargin: Metres;
    /** Share of coordinates in line with another device or a middle of the room, 0 … 1. */
    readonly alignment: number;
  };
}

/** Answer of placing one room. `fewest` is true only when bound and cost meet. */
export interface PlacementResult {
  readonly room: string;
  readonly best: Layout | undefined;
  readonly alternatives: readonly Layout[];
  readonly bound: number;
  readonly boundHolds: "candidates" | "any-position";
  readonly fewest: boolean;
  readonly cancelled: boolean;
  readonly seconds: Seconds;
  readonly problems: readonly Problem[];
}
