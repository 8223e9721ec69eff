import type { CircuitReview, Finding } from "#engine";
import type { OnCircuit } from "../calculate/wire-protocol.ts";

export type CircuitVerdict = "fail" | "should" | "not-proven" | "pass";

/** Findings that speak of a circuit, of what hangs on it, or of a detector that it feeds. @param findings - Of the wiring. @param id - Circuit. @param on - What hangs on it. @returns With their places in the list. @example A contact of one of its detectors: listed */
export function findingsOnCircuit(
  findings: readonly Finding[],
  id: string,
  on: OnCircuit | undefined,
): readonly { readonly finding: Finding; readonly index: number }[] {
  const own = new Set([id, ...(on?.luminaires ?? []), ...(on?.detectors ?? [])]);
  return findings.flatMap((finding, index) =>
    finding.records.some((record) => own.has(record)) ? [{ finding, index }] : [],
  );
}

/** The worst that is known of a circuit: what does not hold before what should be mended, before what nobody knows. */
export function circuitVerdict(
  { checks }: Pick<CircuitReview, "checks">,
  findings: readonly Pick<Finding, "severity">[],
): CircuitVerdict {
  const has = (severity: Finding["severity"]): boolean => findings.some((one) => one.severity === severity);
  if (has("must") || checks.some(({ verdict }) => verdict === "fail")) return "fail";
  if (has("should")) return "should";
  // A circuit without any check has nothing that holds.
  const open = has("note") || checks.length === 0 || checks.some(({ verdict }) => verdict === "not-proven");
  return open ? "not-proven" : "pass";
}
