import type { Said } from "../check/index.ts";
import { type CircuitTree, currentOf } from "./circuit-tree.ts";
import type { Load, ProtectiveDevice, WiringModel } from "./model.ts";

/** Everything that the checks of one circuit look at. */
export interface CircuitCase {
  readonly model: WiringModel;
  readonly tree: CircuitTree;
  readonly device: ProtectiveDevice;
  readonly loads: readonly Load[];
  /** What nobody knows of its loads. */
  readonly doubts: readonly Said[];
  /** What nobody knows of the way to its loads. */
  readonly gaps: readonly Said[];
  /** What a person would have to enter about its loads, and about the way to them. */
  readonly missing: { readonly loads: readonly Said[]; readonly cables: readonly Said[] };
}

/** Design current of a circuit by its heaviest line. @param model - The wiring. @param tree - Of the circuit. @param loads - On it. @returns [A] @source DERIVED-HERE @example Loads of 1 A and 2 A on one line: 3 A */
export function designCurrent({ model, tree, loads }: Pick<CircuitCase, "model" | "tree" | "loads">): number {
  const first = tree.circuit.lines[0] ?? "L1";
  const byLine = { L1: 0, L2: 0, L3: 0 };
  for (const load of loads)
    byLine[tree.circuit.phases === "single-phase" ? first : (load.line ?? first)] +=
      currentOf(load, model.supply.voltage) ?? 0;
  return Math.max(byLine.L1, byLine.L2, byLine.L3);
}
