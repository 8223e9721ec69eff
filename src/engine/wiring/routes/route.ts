import type { Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import { shortestChain } from "./chain.ts";
import { type RouteStyle, routeLengths } from "./distances.ts";
import { type LengthBound, lengthBound, shortestTree } from "./tree.ts";

/** A place that cables go to, at its height above the floor. */
export interface RoutePoint {
  readonly id: string;
  readonly at: Point;
}

/** What one lays in addition to the plan length. */
export interface LengthAllowance {
  /** At each end of each cable. [m] */
  readonly end: Metres;
  /** From the route down to the supply point, once. [m] */
  readonly drop: Metres;
  /** Share for bends and waste. */
  readonly waste: number;
}

/** Editable estimates of the trade. */
export const lengthAllowance: LengthAllowance = { end: 0.3, drop: 0, waste: 0.1 };

export interface CableRoute {
  /** From one point to the next, by id. */
  readonly cables: readonly { readonly from: string; readonly to: string; readonly length: Metres }[];
  /** Length on the plan. [m] */
  readonly planLength: Metres;
  /** Length to buy, allowances included. [m] */
  readonly boughtLength: Metres;
  /** Points with more than two cables: each costs a box and its minutes. */
  readonly branches: readonly string[];
  readonly exact: boolean;
  readonly bound: LengthBound;
}

/**
 * Cables from a supply point to all others.
 *
 * "loop": in and out, from point to point, no box. "branch": the shortest tree; it branches only at the points themselves.
 *
 * @param points - The supply first. @param choice - Style of the way, wiring, allowances.
 * @returns Cables, lengths, branches, and the length below which no cable can go.
 * @source HELD-KARP, STEINER-TREE
 * @example A board and two luminaires in line 3 m apart: two cables, 6 m, no branch
 */
export function cableRoute(
  points: readonly RoutePoint[],
  choice: {
    readonly style: RouteStyle;
    readonly wiring: "loop" | "branch";
    readonly allowance?: LengthAllowance;
  },
): CableRoute {
  const { style, wiring, allowance = lengthAllowance } = choice;
  const lengths = routeLengths(
    points.map(({ at }) => at),
    style,
  );
  const chain = wiring === "loop" ? shortestChain(lengths) : undefined;
  const edges = chain
    ? chain.order.slice(1).map((to, i) => [chain.order[i] as number, to] as const)
    : shortestTree(lengths).edges;
  const cables = edges.map(([from, to]) => ({
    from: points[from]?.id ?? "",
    to: points[to]?.id ?? "",
    length: lengths[from]?.[to] ?? 0,
  }));
  const planLength = cables.reduce((sum, { length }) => sum + length, 0);
  const degree = new Map<string, number>();
  for (const { from, to } of cables) for (const id of [from, to]) degree.set(id, (degree.get(id) ?? 0) + 1);
  return {
    cables,
    planLength,
    boughtLength: (planLength + cables.length * 2 * allowance.end + allowance.drop) * (1 + allowance.waste),
    branches: [...degree].filter(([id, count]) => count > 2 && id !== points[0]?.id).map(([id]) => id),
    exact: chain?.exact ?? true,
    bound: lengthBound(
      points.map(({ at }) => at),
      style,
    ),
  };
}
