import { type PlanningDefaults, planningDefaults } from "#engine";
import type { JobPlanning } from "../schema/planning.ts";

/**
 * The planning numbers that hold in a job: its own where it has them, the program's otherwise.
 *
 * @example planningOf({ speed: 1 }).margin is planningDefaults.margin
 */
export function planningOf(own: JobPlanning): PlanningDefaults {
  return merged(planningDefaults, own) as PlanningDefaults;
}

/** What a job must keep so that `wanted` holds in it: only the numbers that differ from the program's. */
export function ownPlanning(wanted: PlanningDefaults): JobPlanning {
  return differing(planningDefaults, wanted) as JobPlanning;
}

function merged(program: object, own: object): object {
  const result: Record<string, unknown> = { ...program };
  for (const [name, value] of Object.entries(own)) {
    if (value === undefined) continue;
    const base = result[name];
    result[name] =
      typeof value === "object" && value !== null && typeof base === "object" && base !== null
        ? merged(base, value)
        : value;
  }
  return result;
}

function differing(program: object, wanted: object): object {
  const result: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(wanted)) {
    const base = (program as Readonly<Record<string, unknown>>)[name];
    if (typeof value === "object" && value !== null && typeof base === "object" && base !== null) {
      const inner = differing(base, value);
      if (Object.keys(inner).length > 0) result[name] = inner;
    } else if (value !== base && value !== undefined) result[name] = value;
  }
  return result;
}
