import { describe, expect, test } from "vitest";
import {
  createJobDocument,
  editKept,
  emptyJob,
  type JobBoard,
  type JobCircuit,
  jobText,
  parseJob,
} from "#job";
import { asbestosIsOpen, openPoints } from "./open-points.ts";
import { boardQuestions, circuitQuestions } from "./questions.ts";

const board: JobBoard = { id: "b", name: "DB1", system: "unknown", readings: "to-be-measured" };
const circuit: JobCircuit = {
  id: "c",
  name: "Lighting 1",
  breaker: "unknown",
  rcd: "unknown",
  protectiveConductor: "unknown",
  neutralAtSwitch: "unknown",
  twoWay: "unknown",
  sharedNeutral: "unknown",
  oldColours: "unknown",
  driversKnown: "unknown",
  remark: "",
};
const kept = (boards: readonly JobBoard[], circuits: readonly JobCircuit[], visit = {}) => ({
  kept: { ...emptyJob("House"), boards, circuits, visit },
});
const words = (questions: readonly { readonly word: string }[]) => questions.map(({ word }) => word);

describe("open points", () => {
  test("of a house that nobody has looked at are its asbestos register, its boards and its circuits", () => {
    expect(words(openPoints(kept([], [])))).toEqual([
      "visit.open.asbestos",
      "visit.open.no-board",
      "visit.open.no-circuit",
    ]);
  });

  test("a new board and a new circuit are open in everything that is not known, and no is an answer", () => {
    const open = openPoints(kept([board], [circuit], { asbestosRegister: "none" }));
    expect(open.filter(({ of }) => of?.id === "b").length).toBe(6);
    expect(open.filter(({ of }) => of?.id === "c").length).toBe(10);
    const answered: JobCircuit = {
      ...circuit,
      board: "b",
      breaker: "B",
      rating: 10,
      rcd: "no",
      protectiveConductor: "no",
      neutralAtSwitch: "no",
      twoWay: "no",
      sharedNeutral: "no",
      oldColours: "no",
      driversKnown: "no",
    };
    const measured: JobBoard = {
      ...board,
      system: "TT",
      voltage: 230,
      loopImpedance: 40,
      faultCurrent: 900,
      dropUsed: 0,
      readings: "measured",
    };
    expect(openPoints(kept([measured], [answered], { asbestosRegister: "seen" }))).toEqual([]);
    expect(
      words(
        openPoints(kept([{ ...measured, readings: "assumed" }], [answered], { asbestosRegister: "seen" })),
      ),
    ).toEqual(["visit.open.readings-assumed"]);
    expect(
      words(openPoints(kept([measured], [{ ...answered, rcd: "yes" }], { asbestosRegister: "seen" }))),
    ).toEqual(["visit.circuit.residual"]);
  });

  test("the asbestos register is open until it was seen or there is none", () => {
    expect(asbestosIsOpen({})).toBe(true);
    expect(asbestosIsOpen({ asbestosRegister: "not-seen" })).toBe(true);
    expect(asbestosIsOpen({ asbestosRegister: "none" })).toBe(false);
    expect(asbestosIsOpen({ asbestosRegister: "seen" })).toBe(false);
  });
});

describe("readings are asked about, not refused", () => {
  test("usual readings raise no question, and unknown ones neither", () => {
    expect(boardQuestions(board)).toEqual([]);
    expect(circuitQuestions(circuit)).toEqual([]);
    const usual = {
      ...board,
      system: "TN-S",
      voltage: 230,
      loopImpedance: 0.35,
      faultCurrent: 700,
      dropUsed: 0.01,
    } as const;
    expect(boardQuestions(usual)).toEqual([]);
    expect(boardQuestions({ ...usual, system: "TT", loopImpedance: 60, faultCurrent: 1200 })).toEqual([]);
    expect(circuitQuestions({ ...circuit, rating: 10, rcd: "yes", residualCurrent: 0.03 })).toEqual([]);
  });

  test("the voltage may be off by ten per cent and no more: 207 and 253 V are inside, 206 and 254 V are not", () => {
    for (const voltage of [207, 253, 108, 132])
      expect(boardQuestions({ ...board, voltage }), `${voltage}`).toEqual([]);
    for (const voltage of [206, 254, 400, 12])
      expect(words(boardQuestions({ ...board, voltage })), `${voltage}`).toEqual(["visit.ask.voltage"]);
  });

  test("a fault current below what the loop lets through to earth is asked about: 230 V over 0.5 Ω are 460 A", () => {
    const tn = { ...board, system: "TN-C-S", voltage: 230, loopImpedance: 0.5 } as const;
    expect(words(boardQuestions({ ...tn, faultCurrent: 300 }))).toEqual(["visit.ask.fault-low"]);
    expect(boardQuestions({ ...tn, faultCurrent: 300 })[0]?.values).toMatchObject({
      earth: "0.46",
      current: "0.3",
    });
    expect(boardQuestions({ ...tn, faultCurrent: 460 })).toEqual([]);
    expect(words(boardQuestions({ ...board, faultCurrent: 600_000 }))).toEqual(["visit.ask.fault-high"]);
  });

  test("a loop of 5 Ω is asked about where the system is TN, not where it is TT or not known", () => {
    expect(words(boardQuestions({ ...board, system: "TN-S", loopImpedance: 5 }))).toEqual(["visit.ask.loop"]);
    expect(boardQuestions({ ...board, system: "TT", loopImpedance: 5 })).toEqual([]);
    expect(boardQuestions({ ...board, loopImpedance: 5 })).toEqual([]);
  });

  test("strange ratings, contradictions and shared neutrals are named", () => {
    expect(words(circuitQuestions({ ...circuit, rating: 63 }))).toEqual(["visit.ask.rating"]);
    expect(words(circuitQuestions({ ...circuit, residualCurrent: 0.04 }))).toEqual(["visit.ask.residual"]);
    expect(words(circuitQuestions({ ...circuit, rcd: "no", residualCurrent: 0.03 }))).toEqual([
      "visit.ask.rcd",
    ]);
    expect(words(circuitQuestions({ ...circuit, sharedNeutral: "yes" }))).toEqual(["visit.ask.shared"]);
    expect(words(boardQuestions({ ...board, dropUsed: 0.04 }))).toEqual(["visit.ask.drop"]);
  });
});

test("what is written down survives the file: unknown stays unknown, and a reading keeps its unit", () => {
  let count = 0;
  const document = createJobDocument(undefined, { newId: () => `new-${++count}` });
  document.run(
    editKept("visit.edit", [
      { do: "visit", fields: { yearBuilt: 1962, complaint: "Light stays on", asbestosRegister: "not-seen" } },
      { do: "put", kind: "boards", record: { ...board, faultCurrent: 700 } },
      { do: "put", kind: "circuits", record: { ...circuit, residualCurrent: 0.03 } },
    ]),
  );
  const read = parseJob(jobText(document.job()));
  if (!read.job) throw new Error("The job could not be read again.");
  expect(read.job.visit).toEqual({
    yearBuilt: 1962,
    complaint: "Light stays on",
    asbestosRegister: "not-seen",
  });
  expect(read.job.boards).toEqual([{ ...board, faultCurrent: 700 }]);
  expect(read.job.circuits).toEqual([{ ...circuit, residualCurrent: 0.03 }]);
});
