import { expect, test } from "vitest";
import { bytesOf, writtenBuilding } from "../../../test/exchange/written-building.ts";
import { readIfcInWorker } from "./in-node.ts";

const file = { name: "written.ifc", bytes: bytesOf(writtenBuilding({ schema: "IFC4", unit: "metre" })) };

test("a thread of its own gives the same rooms, with progress", async () => {
  const steps: string[] = [];
  const result = await readIfcInWorker(file, { seconds: 50, progress: (step) => steps.push(step) });
  expect("survey" in result && result.survey.rooms.map((room) => room.name)).toEqual(["Office", "Store"]);
  expect(steps).toContain("openings");
});

test("a reading that takes too long is killed and says so", async () => {
  const result = await readIfcInWorker(file, { seconds: 0.001 });
  expect(result).toEqual({ problems: [{ code: "ifc-time-over", values: { seconds: 0.001 } }] });
});

test("a reading that takes too much memory is killed and says so", async () => {
  const result = await readIfcInWorker(file, { seconds: 50, megabytes: 1 });
  expect(result).toEqual({ problems: [{ code: "ifc-memory-over", values: { megabytes: 1 } }] });
});

test("a reading can be called off", async () => {
  const stop = new AbortController();
  const reading = readIfcInWorker(file, { signal: stop.signal });
  stop.abort(new Error("called off"));
  await expect(reading).rejects.toThrow("called off");
});
