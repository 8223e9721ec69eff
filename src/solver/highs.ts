import type { Highs, ModelData } from "highs";
import type { CoverModel, CoverSolver, RelaxationAnswer, SolverAnswer } from "#engine";

/** Where the solver's WebAssembly lies. Node finds it beside the package; a browser passes the address that its build gave the file. */
export interface SolverPlace {
  readonly wasm?: string;
}

/**
 * Loads the MILP solver and gives it the shape that placement asks for. Solves block the thread that they run on: use a worker.
 *
 * @param place.wasm - Address of the solver's WebAssembly; absent in Node.
 * @returns The solver port.
 */
export async function loadSolver(place: SolverPlace = {}): Promise<CoverSolver> {
  const { default: load } = await import("highs");
  const { wasm } = place;
  const highs = await load(wasm === undefined ? {} : { locateFile: () => wasm });
  return {
    solve: async (model, options) => solveCover(highs, { model, ...options }),
    relax: async (model, options) => relaxCover(highs, { model, ...options }),
  };
}

interface Solve {
  readonly model: CoverModel;
  readonly seconds: number;
  readonly start?: readonly number[];
  readonly stop?: () => boolean;
  readonly gap?: number;
}

/** A bound as near to the cost as this has met it. */
const leastGap = 1e-6;

function solveCover(highs: Highs, { model, seconds, start, stop, gap = 0 }: Solve): SolverAnswer {
  const { modelStatus, callbackType } = highs.constants;
  if (model.rows.some((row) => row.length === 0))
    return { status: "infeasible", bound: Number.POSITIVE_INFINITY };
  return highs.withModel(milpOf(highs, model), (milp): SolverAnswer => {
    milp.options.set({
      output_flag: false,
      time_limit: Math.max(0.05, seconds),
      mip_rel_gap: 0,
      mip_abs_gap: Math.max(leastGap, gap - leastGap),
    });
    if (start !== undefined) {
      const colValue = new Float64Array(model.costs.length);
      for (const column of start) colValue[column] = 1;
      milp.setSolution({ colValue });
    }
    const { modelStatus: status } = milp.run(
      stop === undefined
        ? undefined
        : {
            [callbackType.mipInterrupt](event) {
              if (stop()) event.interrupt();
            },
          },
    );
    if (status === modelStatus.infeasible) return { status: "infeasible", bound: Number.POSITIVE_INFINITY };
    const proven = Number(milp.info.get("mip_dual_bound"));
    const bound = Number.isFinite(proven) ? proven : 0;
    // 2: a feasible primal solution is at hand.
    if (Number(milp.info.get("primal_solution_status")) !== 2) return { status: "stopped", bound };
    // The solver works with tolerances: take the rounded columns and cost them again.
    const value = milp.getSolution().colValue;
    const chosen = model.costs.flatMap((_, column) => ((value[column] ?? 0) > 0.5 ? [column] : []));
    const cost = chosen.reduce((sum, column) => sum + model.costs[column]!, 0);
    return {
      status: status === modelStatus.optimal ? "optimal" : "feasible",
      chosen,
      cost,
      bound: Math.min(bound, cost),
    };
  });
}

function relaxCover(highs: Highs, { model, seconds }: Solve): RelaxationAnswer | undefined {
  const { integrality: _, ...relaxed } = milpOf(highs, model);
  return highs.withModel(relaxed, (lp): RelaxationAnswer | undefined => {
    lp.options.set({ output_flag: false, time_limit: Math.max(0.05, seconds), solver: "choose" });
    if (lp.run().modelStatus !== highs.constants.modelStatus.optimal) return undefined;
    const { rowDual, colValue } = lp.getSolution();
    return {
      most: model.costs.flatMap((_, column) => ((colValue[column] ?? 0) > 0.5 ? [column] : [])),
      bound: lp.getObjectiveValue(),
      prices: model.rows.map((_row, index) => Math.max(0, rowDual[index] ?? 0)),
    };
  });
}

/** Rows: at least one column each; then one row per conflict: at most one of the two. */
function milpOf(highs: Highs, model: CoverModel): ModelData & { readonly integrality: Int32Array } {
  const columns = model.costs.length;
  const lines: (readonly number[])[] = [...model.rows, ...model.conflicts];
  const starts = new Int32Array(lines.length + 1);
  lines.forEach((line, index) => {
    starts[index + 1] = starts[index]! + line.length;
  });
  const entries = starts[lines.length]!;
  const covers = model.rows.length;
  const fixed = new Set(model.fixed);
  return {
    numCols: columns,
    numRows: lines.length,
    sense: highs.constants.objectiveSense.minimize,
    colCost: Float64Array.from(model.costs),
    colLower: Float64Array.from(model.costs, (_, column) => (fixed.has(column) ? 1 : 0)),
    colUpper: new Float64Array(columns).fill(1),
    rowLower: Float64Array.from(lines, (_, index) => (index < covers ? 1 : -highs.infinity)),
    rowUpper: Float64Array.from(lines, (_, index) => (index < covers ? highs.infinity : 1)),
    matrix: {
      format: "csr",
      numRows: lines.length,
      numCols: columns,
      starts,
      indices: Int32Array.from(lines.flat()),
      values: new Float64Array(entries).fill(1),
    },
    integrality: new Int32Array(columns).fill(highs.constants.variableType.integer),
  };
}
