import { describe, expect, test } from "vitest";
import { reviewWiring } from "#engine";
import { createJobDocument, demoJob, editBoth, installationOf, loadFile, siteOf } from "#job";
import { circuitOf, removeSteps, renameSteps } from "./assign.ts";
import { mostLuminaires, proposeCircuits } from "./propose.ts";

const words = { board: (n: number) => `Board ${n}`, circuit: (n: number) => `Lighting ${n}` };

/** The demo job before anybody spoke of circuits. */
const bare = (() => {
  const job = demoJob();
  return {
    ...job,
    boards: [],
    circuits: [],
    luminaires: job.luminaires.map(({ circuit: _, emergency: __, ...one }) => one),
    detectors: job.detectors.map(({ circuit: _, ...one }) => one),
    switches: job.switches.map(({ circuit: _, ...one }) => one),
  };
})();
const opened = (file: typeof bare) => {
  let made = 0;
  return { site: siteOf(file).site, kept: file as ReturnType<typeof demoJob>, newId: () => `new-${made++}` };
};
const run = (steps: { readonly site: readonly unknown[]; readonly kept: readonly unknown[] }) => {
  const document = createJobDocument(undefined, { newId: () => "id" });
  document.run(loadFile(bare as never));
  expect(document.run(editBoth("wire.edit.propose", steps as never)).problems).toEqual([]);
  return document;
};

describe("proposed circuits", () => {
  test("feed every luminaire, none of them with more than the usual number", () => {
    const proposal = proposeCircuits(opened(bare), words);
    const job = run(proposal).job();
    expect(proposal.luminaires).toBe(bare.luminaires.length);
    expect(job.circuits).toHaveLength(proposal.circuits);
    const counts = job.circuits.map(
      ({ id }) => job.luminaires.filter((one) => circuitOf({ kept: job }, one) === id).length,
    );
    expect(counts.reduce((a, b) => a + b, 0)).toBe(bare.luminaires.length);
    expect(Math.min(...counts)).toBeGreaterThan(0);
    expect(Math.max(...counts)).toBeLessThanOrEqual(mostLuminaires);
  });

  test("say of themselves that they are assumed, and are answered by the review at once", () => {
    const document = run(proposeCircuits(opened(bare), words));
    const job = document.job();
    expect(job.circuits.every(({ readings }) => readings === "assumed")).toBe(true);
    expect(job.boards.every(({ readings }) => readings === "assumed")).toBe(true);
    const review = reviewWiring(document.snapshot().site, installationOf(job));
    expect(review?.circuits).toHaveLength(job.circuits.length);
    // Nobody has looked at anything: nothing of it may count as proven as a whole.
    expect(review?.circuits.every(({ checks }) => checks.some(({ verdict }) => verdict !== "pass"))).toBe(
      true,
    );
  });

  test("keep rooms that one detector switches on one circuit", () => {
    const job = run(proposeCircuits(opened(bare), words)).job();
    for (const { controls } of job.detectors) {
      const own = job.luminaires.filter(({ room }) => controls.includes(room));
      if (own.length > mostLuminaires) continue;
      expect(new Set(own.map(({ circuit }) => circuit)).size).toBeLessThanOrEqual(1);
    }
  });

  test("leave alone what has a circuit, and propose nothing a second time", () => {
    const job = run(proposeCircuits(opened(bare), words)).job();
    expect(proposeCircuits(opened(job as never), words)).toEqual({
      site: [],
      kept: [],
      circuits: 0,
      luminaires: 0,
    });
  });
});

test("a circuit that is renamed keeps its luminaires, also where the new name is another's", () => {
  const document = run(proposeCircuits(opened(bare), words));
  const [first, second] = document.job().circuits;
  const count = (id: string): number =>
    document.job().luminaires.filter((one) => circuitOf({ kept: document.job() }, one) === id).length;
  const before = count(first!.id);
  const rename = (name: string): void => {
    const job = { site: document.snapshot().site, kept: document.job() };
    document.run(editBoth("wire.edit.rename", renameSteps(job, document.job().circuits[0]!, name) as never));
  };
  rename("Corridor");
  expect(count(first!.id)).toBe(before);
  rename(second!.name);
  expect(count(first!.id)).toBe(before);
});

test("a circuit that is removed leaves its name nowhere, and one step of undo brings all of it back", () => {
  const document = run(proposeCircuits(opened(bare), words));
  const before = document.job();
  const [first] = before.circuits;
  const naming = (): number =>
    document.job().luminaires.filter(({ circuit }) => circuit === first!.name).length;
  const count = naming();
  expect(count).toBeGreaterThan(0);
  const steps = removeSteps({ site: document.snapshot().site, kept: before }, first!);
  document.run(editBoth("visit.edit.remove", steps as never));
  expect([naming(), document.job().circuits.length]).toEqual([0, before.circuits.length - 1]);
  document.undo();
  expect([naming(), document.job()]).toEqual([count, before]);
});
