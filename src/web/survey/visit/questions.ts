import type { SourceId } from "#engine";
import type { JobBoard, JobCircuit } from "#job";
import { numberText } from "../../texts/index.ts";
import type { TextKey } from "../../texts/visit.ts";

/** A reading that is kept as it was typed, and asked about: it may be right, but rarely is. */
export interface Question {
  readonly word: TextKey;
  readonly values: Readonly<Record<string, string>>;
  /** Where the limit comes from. */
  readonly source: SourceId;
}

/** Nominal voltages between line and neutral that lighting is supplied with, and how far a supply may be off. [V] */
const nominals = [120, 230] as const;
const supplyTolerance = 0.1;
/** Fault loops of TN boards stay far below this; a higher figure is often one with the earth electrode in it. [Ω] */
const mostLoopTn = 1;
/** With an electrode beyond this a fault is hardly noticed at all. [Ω] */
const mostLoopTt = 200;
/** Boards that feed lighting rarely see more; a typing slip by the unit does. [A] */
const mostFaultCurrent = 50_000;
/** Readings of one board that fit together differ by less: meters, temperature, the time of day. */
const readingSlack = 0.8;
const mostDrop = 0.03;
const usualRatings = [2, 4, 6, 8, 10, 13, 15, 16, 20] as const;
const residualCurrents = [0.006, 0.01, 0.03, 0.1, 0.3, 0.5] as const;

/** What should be asked again about the readings of a board. */
export function boardQuestions(board: JobBoard): readonly Question[] {
  const { voltage, loopImpedance, faultCurrent, dropUsed, system } = board;
  const questions: Question[] = [];
  if (
    voltage !== undefined &&
    !nominals.some((one) => Math.abs(voltage - one) <= supplyTolerance * one + 1e-9)
  )
    questions.push({
      word: "visit.ask.voltage",
      values: { volts: numberText(voltage) },
      source: "IEC-60038",
    });
  const mostLoop = system === "TT" || system === "IT" ? mostLoopTt : mostLoopTn;
  if (loopImpedance !== undefined && system !== "unknown" && loopImpedance > mostLoop)
    questions.push({
      word: "visit.ask.loop",
      values: { ohms: numberText(loopImpedance), most: numberText(mostLoop), system },
      source: "COMMON-PRACTICE",
    });
  if (faultCurrent !== undefined && faultCurrent > mostFaultCurrent)
    questions.push({
      word: "visit.ask.fault-high",
      values: { current: numberText(faultCurrent / 1000) },
      source: "COMMON-PRACTICE",
    });
  // The highest fault current at a board is at least the one to earth, voltage over loop impedance.
  if (voltage !== undefined && loopImpedance !== undefined && faultCurrent !== undefined) {
    const toEarth = voltage / loopImpedance;
    if (faultCurrent < readingSlack * toEarth)
      questions.push({
        word: "visit.ask.fault-low",
        values: {
          current: numberText(faultCurrent / 1000),
          earth: numberText(toEarth / 1000),
          volts: numberText(voltage),
          ohms: numberText(loopImpedance),
        },
        source: "DERIVED-HERE",
      });
  }
  if (dropUsed !== undefined && dropUsed > mostDrop)
    questions.push({
      word: "visit.ask.drop",
      values: { drop: numberText(dropUsed * 100), most: numberText(mostDrop * 100) },
      source: "IEC-60364-5-52",
    });
  return questions;
}

/** What should be asked again about a circuit. */
export function circuitQuestions(circuit: JobCircuit): readonly Question[] {
  const { rating, residualCurrent, rcd, sharedNeutral } = circuit;
  const questions: Question[] = [];
  if (rating !== undefined && !usualRatings.some((one) => Math.abs(one - rating) < 1e-9))
    questions.push({
      word: "visit.ask.rating",
      values: { rating: numberText(rating) },
      source: "COMMON-PRACTICE",
    });
  if (
    residualCurrent !== undefined &&
    !residualCurrents.some((one) => Math.abs(one - residualCurrent) < 1e-6)
  )
    questions.push({
      word: "visit.ask.residual",
      values: { current: numberText(residualCurrent * 1000) },
      source: "IEC-61008",
    });
  if (residualCurrent !== undefined && rcd === "no")
    questions.push({ word: "visit.ask.rcd", values: {}, source: "DERIVED-HERE" });
  if (sharedNeutral === "yes")
    questions.push({ word: "visit.ask.shared", values: {}, source: "COMMON-PRACTICE" });
  return questions;
}
