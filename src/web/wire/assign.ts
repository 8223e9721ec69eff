import { circuitNamed, type Luminaire } from "#engine";
import type { JobCircuit, KeptStep } from "#job";
import type { EditStep, OpenJob } from "../contract.ts";
import { setStep } from "../plan/edit/steps.ts";

type Named = Pick<JobCircuit, "id" | "name">;

/** How luminaires name a circuit: by its name where it has one of its own, otherwise by its id. */
export function referenceTo(circuits: readonly Named[], { id, name }: Named): string {
  const wanted = name.trim().toLowerCase();
  const own =
    circuits.filter((one) => one.id !== id && one.name.trim().toLowerCase() === wanted).length === 0;
  return wanted !== "" && own ? name.trim() : id;
}

/** The circuit that a luminaire, switch or detector names. */
export const circuitOf = (
  job: Pick<OpenJob, "kept">,
  { circuit }: { readonly circuit?: string | undefined },
): string | undefined => circuitNamed({ boards: [], circuits: job.kept.circuits as never }, circuit)?.id;

/** Puts luminaires on a circuit, or takes them off. */
export function assignSteps(
  circuits: readonly Named[],
  luminaires: readonly Pick<Luminaire, "id">[],
  circuit: Named | undefined,
): readonly EditStep[] {
  const reference = circuit && referenceTo(circuits, circuit);
  return luminaires.map(({ id }) => setStep("luminaires", id, { circuit: reference }));
}

interface BothSteps {
  readonly site: readonly EditStep[];
  readonly kept: readonly KeptStep[];
}

type Wiring = Pick<OpenJob, "kept" | "site">;

/** Renames a circuit, and takes along all that names it. */
export function renameSteps(job: Wiring, circuit: Named, name: string): BothSteps {
  const renamed = { ...circuit, name };
  const others = job.kept.circuits.map((one) => (one.id === circuit.id ? renamed : one));
  return {
    site: namingSteps(job, circuit, referenceTo(others, renamed)),
    kept: [{ do: "set", kind: "circuits", id: circuit.id, fields: { name } }],
  };
}

/** Removes a circuit; nothing names it any more, so that one of the same name later does not take over what hung on it. */
export const removeSteps = (job: Wiring, circuit: Named): BothSteps => ({
  site: namingSteps(job, circuit, undefined),
  kept: [{ do: "remove", kind: "circuits", id: circuit.id }],
});

/** All that names a circuit names it by this reference. */
function namingSteps(job: Wiring, circuit: Named, reference: string | undefined): readonly EditStep[] {
  const naming = <T extends { readonly circuit?: string }>(records: readonly T[]): readonly T[] =>
    records.filter((one) => circuitOf(job, one) === circuit.id && one.circuit !== reference);
  return [
    ...naming(job.site.luminaires).map(({ id }) => setStep("luminaires", id, { circuit: reference })),
    ...naming(job.site.switches).map(({ id }) => setStep("switches", id, { circuit: reference })),
    ...naming(job.site.detectors).map(({ id }) => setStep("detectors", id, { circuit: reference })),
  ];
}
