import { type Check, type CircuitReview, english, reviewWiring, type Site, type WiringReview } from "#engine";
import type { JobFile } from "#job";
import { aligned, rounded } from "./words.ts";

/** The wiring of a job, checked; undefined where the job says nothing of it. */
export async function checkWiring(job: JobFile, site: Site): Promise<WiringReview | undefined> {
  const { installationOf } = await import("#job");
  return reviewWiring(site, installationOf(job));
}

/** Circuits and contacts with every check, and what was taken for granted; null where nothing is on record. */
export const wiringJson = (review: WiringReview | undefined): object => ({
  wiring: review
    ? {
        supply: review.supply,
        circuits: review.circuits.map(circuitJson),
        contacts: review.contacts,
        mountings: review.mountings.map(({ checks, fixing, ...mounting }) => ({
          ...mounting,
          fixing: fixing ?? null,
          checks: checks.map(({ verdict, what, actual, limit, unit, source, assumptions }) => ({
            verdict,
            what,
            actual: actual ?? null,
            limit: limit ?? null,
            unit,
            source,
            assumptions,
          })),
        })),
        standby: { perYear: rounded(review.standby.perYear), unknown: review.standby.unknown },
        assumptions: review.assumptions,
      }
    : null,
});

const circuitJson = ({ power, current, ...circuit }: CircuitReview): object => ({
  ...circuit,
  board: circuit.board ?? null,
  rating: circuit.rating ?? null,
  section: circuit.section ?? null,
  length: circuit.length ?? null,
  power: power === undefined ? null : rounded(power),
  current: current === undefined ? null : rounded(current),
});

/** Circuits as a table, then what was taken for granted. */
export function wiringText(review: WiringReview | undefined): string {
  if (!review || review.circuits.length === 0) return "";
  return [
    aligned(
      ["Circuit", "Board", "Device", "Luminaires", "Load", "Current", "Drop", "Zs", "Verdict"],
      review.circuits.map(circuitLine),
      new Set([3, 4, 5, 6, 7]),
    ),
    ...standbyLine(review),
    ...(review.assumptions.length === 0
      ? []
      : [
          "Taken for granted:",
          ...review.assumptions.map(({ text, records }) => `  ${english(text)} (${records.length})`),
        ]),
  ].join("\n");
}

function standbyLine({ standby: { perYear, unknown } }: WiringReview): readonly string[] {
  if (perYear === 0 && unknown.length === 0) return [];
  const open = unknown.length === 0 ? "" : `; not known of ${unknown.join(", ")}`;
  return [`Standby of the detectors: ${rounded(perYear, 1)} kWh a year${open}`];
}

function circuitLine(circuit: CircuitReview): readonly string[] {
  const { name, board, breaker, rating, luminaires, power, current, checks } = circuit;
  return [
    name,
    board ?? "–",
    deviceOf(breaker, rating),
    String(luminaires),
    power === undefined ? "unknown" : `${rounded(power, 0)} W`,
    current === undefined ? "unknown" : `${current.toFixed(2)} A`,
    figure(checks, /^Voltage drop/, 2),
    figure(checks, /^Fault loop/, 2),
    verdictOf(checks),
  ];
}

const deviceOf = (breaker: CircuitReview["breaker"], rating: number | undefined): string => {
  const amperes = rating === undefined ? "? A" : `${rating} A`;
  return breaker === "unknown" ? amperes : breaker === "fuse-gG" ? `gG ${amperes}` : `${breaker} ${amperes}`;
};

/** A figure of a check; none where nothing is known of it, so that a drop of what little is known is not read as one. */
function figure(checks: readonly Check[], what: RegExp, digits: number): string {
  const check = checks.find((one) => what.test(english(one.what)));
  return check?.actual === undefined || check.verdict === "not-proven"
    ? "–"
    : `${check.actual.toFixed(digits)} ${check.unit}`;
}

function verdictOf(checks: readonly Check[]): string {
  const count = (verdict: Check["verdict"]): number => checks.filter((one) => one.verdict === verdict).length;
  const [failed, open] = [count("fail"), count("not-proven")];
  if (checks.length === 0) return "not judged";
  return failed > 0 ? `${failed} failed` : open > 0 ? `${open} not proven` : "pass";
}
