import { expect, test } from "vitest";
import { say } from "#engine";
import { line, type WrittenDrawing, written } from "../../../test/exchange/written-dxf.ts";
import { readPlanInWorker } from "./in-node.ts";

const plan: WrittenDrawing = { entities: [...line(0, 0, 5, 0), ...line(5, 0, 5, 4)] };
const file = { name: "plan.dxf", bytes: written(plan) };

test("a thread of its own gives the lines of a drawing, with progress", async () => {
  const steps: string[] = [];
  const result = await readPlanInWorker(file, { seconds: 50, progress: (step) => steps.push(step) });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  expect([...result.linework.lines]).toEqual([0, 0, 5, 0, 5, 0, 5, 4]);
  expect(result.linework.format).toBe("dxf");
  expect(steps).toContain("check");
});

test("the kind of a file is told by its content before its name", async () => {
  const svg = new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10"><path d="M0 0H5" stroke="black"/></svg>',
  );
  const result = await readPlanInWorker({ name: "plan.dxf", bytes: svg }, { seconds: 50 });
  expect("linework" in result && result.linework.format).toBe("svg");
});

test("a file that is no plan says what it looks like", async () => {
  const png = { name: "plan", bytes: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10) };
  expect(await readPlanInWorker(png, { seconds: 50 })).toEqual({
    problems: [{ code: "plan-kind-unknown", values: { found: say`a PNG picture` } }],
  });
});

test("a reading that takes too long is killed and says so", async () => {
  expect(await readPlanInWorker(file, { seconds: 0.001 })).toEqual({
    problems: [{ code: "plan-time-over", values: { seconds: 0.001 } }],
  });
});

test("a reading that takes too much memory is killed and says so", async () => {
  expect(await readPlanInWorker(file, { seconds: 50, megabytes: 1 })).toEqual({
    problems: [{ code: "plan-memory-over", values: { megabytes: 1 } }],
  });
});

test("a reading can be called off", async () => {
  const stop = new AbortController();
  const reading = readPlanInWorker(file, { signal: stop.signal });
  stop.abort(new Error("called off"));
  await expect(reading).rejects.toThrow("called off");
});
