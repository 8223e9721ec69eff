import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoModels } from "#job";
import { refusalCodes } from "#output";
import { writtenBuilding } from "../../test/exchange/written-building.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-model-"));
  await writeFile(join(folder, "given.ifc"), writtenBuilding({ schema: "IFC4", unit: "milli" }));
  await runHere(folder, ["import", "given.ifc", "-o", "read.job.json"]);
  const job = JSON.parse(await readFile(join(folder, "read.job.json"), "utf8"));
  const [room] = job.rooms;
  const [model] = demoModels;
  const detector = { id: "d1", tag: "B1.01", room: room.id, model: model!.id, at: [2, 1.5], height: 2.6 };
  await writeFile(
    join(folder, "planned.job.json"),
    JSON.stringify({ ...job, models: demoModels, detectors: [{ ...detector, turn: 0 }] }),
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const pack = (out: string, model: string, ...more: readonly string[]) =>
  runHere(folder, [
    ...["pack", "planned.job.json", "-o", out, "--only", "building", "--model", model],
    ...more,
  ]);

test("pack --model adds the devices to the given model, and says nothing else in it", async () => {
  await pack("a", "given.ifc");
  const [given, filled] = await Promise.all(
    ["given.ifc", "a/building.ifc"].map((name) => readFile(join(folder, name), "utf8")),
  );
  const sensors = filled!.split("\n").filter((line) => line.includes("=IFCSENSOR("));
  expect(sensors).toHaveLength(1);
  expect(sensors[0]).toContain("'B1.01'");
  // In millimetres, as the file is.
  expect(filled).toContain("IFCCARTESIANPOINT((2000.,1500.,2600.))");
  const added = new Set(filled!.split("\n"));
  expect(given!.split("\n").filter((line) => !added.has(line))).toEqual([]);
  await pack("b", "given.ifc");
  expect(await readFile(join(folder, "b/building.ifc"), "utf8")).toBe(filled);
});

test("a model that cannot take them is refused with the reason", async () => {
  await writeFile(join(folder, "none.ifc"), "no model");
  const code = async (model: string): Promise<unknown> => {
    const { exit, json } = await pack("c", model, "--json");
    return [exit, json().problems[0].code];
  };
  expect(await code("a/building.ifc")).toEqual([2, "model-filled-already"]);
  expect(await code("none.ifc")).toEqual([2, "ifc-not-step"]);
  expect(await code("gone.ifc")).toEqual([2, "file-unreadable"]);
  await writeFile(
    join(folder, "other.ifc"),
    writtenBuilding({ schema: "IFC4", unit: "metre" }).replaceAll(/'[0-3][\w$]{21}'/g, (id) =>
      id.split("").reverse().join("").replace(/^'./, "'1"),
    ),
  );
  expect(await code("other.ifc")).toEqual([2, "model-of-another-building"]);
  // A model without contexts does not come through the reading; what would be said of it has a sentence all the same.
  expect(refusalCodes["no-structure"]).toBe("model-without-structure");
});
