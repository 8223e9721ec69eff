import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { IfcAPI, LogLevel } from "web-ifc";
import { floorOf, poleOf, type Site } from "#engine";
import { type GeometryKernel, givenModel, loadKernel, readIfc, type SurveyRecords } from "#exchange";
import { devicesIntoModel, type ModelToFill, modelRefusal } from "#output";
import { detectorLike, roundModel, siteLike } from "../engine/records.ts";
import { realFiles } from "../real-files.ts";
import { type WrittenBuilding, writtenBuilding } from "./written-building.ts";

let kernel: GeometryKernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const settings = new Map([["d0", [{ title: "Off delay", words: "10 min" }]]]);
const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

async function readAgain(bytes: Uint8Array): Promise<SurveyRecords> {
  const read = await readIfc(bytes, { fileName: "model.ifc", kernel });
  if ("problems" in read) throw new Error(read.problems.map(({ code }) => code).join());
  return read.survey;
}

/** The site of a model with a detector in the middle of each of its rooms, each turned another way and hung at another height. */
async function filled(bytes: Uint8Array) {
  const survey = await readAgain(bytes);
  const site = siteLike({
    storeys: survey.storeys,
    rooms: survey.rooms,
    floorPieces: survey.floorPieces,
    models: [roundModel()],
    detectors: survey.rooms.map((room, i) =>
      detectorLike({
        id: `d${i}`,
        tag: `B1.${String(i + 1).padStart(2, "0")}`,
        room: room.id,
        at: poleOf(floorOf(room)[0]!).at,
        height: room.ceilingHeight - 0.01 * i - 0.05,
        turn: (i * Math.PI) / 5 - 2 * Math.PI * Math.floor(i / 10),
      }),
    ),
  });
  const given = givenModel(bytes);
  if ("problem" in given) throw new Error(given.problem.code);
  const model: ModelToFill = { ...given, shift: [survey.shift[0], survey.shift[1]] };
  return { survey, site, model, into: devicesIntoModel(site, model, { settings }) };
}

const sorted = <Thing extends { readonly tag: string }>(things: readonly Thing[]): readonly Thing[] =>
  things.toSorted((a, b) => (a.tag < b.tag ? -1 : 1));

/** Our own reader finds the same rooms, and each detector where the job has it. */
async function expectSame(
  { site, survey }: { readonly site: Site; readonly survey: SurveyRecords },
  into: Uint8Array,
): Promise<void> {
  const again = await readAgain(into);
  expect(again.rooms).toEqual(survey.rooms);
  expect(again.storeys).toEqual(survey.storeys);
  expect(again.openings).toEqual(survey.openings);
  const found = sorted(again.detectors ?? []).map(({ id, ...rest }) => rest);
  const ours = sorted(site.detectors).map(({ tag, room, model, at, height, turn }) => ({
    tag,
    room,
    model,
    at: at.map((value) => expect.closeTo(value, 3)),
    height: expect.closeTo(height, 3),
    turn: expect.closeTo(turn, 3),
  }));
  expect(found).toEqual(ours);
}

/** The bare reader of building models finds a body for each, at its place in the world. */
function bareBodies(bytes: Uint8Array): number {
  const { api } = bare;
  const model = api.OpenModel(bytes);
  let count = 0;
  for (const type of ["IFCSENSOR", "IFCDISTRIBUTIONCONTROLELEMENT"])
    api.StreamAllMeshesWithTypes(model, [api.GetTypeCodeFromName(type)], (mesh) => {
      if (mesh.geometries.size() > 0) count++;
    });
  api.CloseModel(model);
  return count;
}
const bare = { api: new IfcAPI() };
beforeAll(async () => {
  await bare.api.Init();
  bare.api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
});

const choices: readonly WrittenBuilding[] = [
  { schema: "IFC4", unit: "metre" },
  { schema: "IFC2X3", unit: "milli" },
  { schema: "IFC2X3", unit: "foot", turn: 0.4, at: [12, -7, 3] },
  { schema: "IFC4", unit: "milli", turn: 2.1, at: [431_000, 5_120_000, 110] },
  { schema: "IFC4", unit: "none", buildings: 2 },
  { schema: "IFC2X3", unit: "metre", storeys: "none", at: [3, 4, 5] },
];

describe("The devices of a job in the model that it was read from", () => {
  test.each(choices)("are read again where they hang, and so are its rooms: %j", async (choice) => {
    const bytes = encoded(writtenBuilding(choice));
    const done = await filled(bytes);
    expect(done.site.detectors.length).toBeGreaterThan(0);
    await expectSame(done, done.into);
    expect(bareBodies(done.into)).toBe(done.site.detectors.length);
  });

  test("are added after the last record, and not one byte of the model is changed", async () => {
    for (const choice of choices) {
      const bytes = encoded(writtenBuilding(choice));
      const { model, into, site } = await filled(bytes);
      expect(Buffer.compare(into.subarray(0, model.end), bytes.subarray(0, model.end))).toBe(0);
      const rest = bytes.length - model.end;
      expect(Buffer.compare(into.subarray(into.length - rest), bytes.subarray(model.end))).toBe(0);
      const added = new TextDecoder().decode(into.subarray(model.end, into.length - rest));
      const names = [...added.matchAll(/^#(\d+)=/gm)].map((match) => Number(match[1]));
      expect(names).toEqual(names.map((_, i) => model.lastStep + 1 + i));
      const type = choice.schema === "IFC4" ? "IFCSENSOR(" : "IFCDISTRIBUTIONCONTROLELEMENT(";
      expect(added.split(type).length - 1).toBe(site.detectors.length);
      expect(added).toContain("'Off delay',$,IFCLABEL('10 min')");
      // Equal input, equal bytes.
      expect(Buffer.compare(devicesIntoModel(site, model, { settings }), into)).toBe(0);
    }
  });

  test("are refused by the model of another building, and by one that has them already", async () => {
    const { site, model, into } = await filled(encoded(writtenBuilding(choices[0]!)));
    const other = siteLike({ rooms: site.rooms.map((room) => ({ ...room, id: `x${room.id}` })) });
    expect(modelRefusal(site, model)).toBeUndefined();
    expect(modelRefusal(other, model)).toBe("another-building");
    const again = givenModel(into);
    if ("problem" in again) throw new Error(again.problem.code);
    expect(modelRefusal(site, { ...again, shift: [0, 0] })).toBe("filled-already");
    expect(modelRefusal(site, { ...model, context: undefined })).toBe("no-structure");
    expect(() => devicesIntoModel(other, model, { settings })).toThrow();
  });

  test("a file that is no model is a problem, not a crash", () => {
    expect(givenModel(encoded("hello"))).toHaveProperty("problem.code");
    expect(givenModel(encoded("ISO-10303-21;\nHEADER;\n"))).toHaveProperty("problem.code");
  });
});

const folder = realFiles("ifc");
const files = folder === undefined ? [] : readdirSync(folder).filter((name) => name.endsWith(".ifc"));

describe.skipIf(folder === undefined)("In real models", () => {
  test.each(files.length === 0 ? ["none"] : files)(
    "%s keeps its rooms and shows every device",
    async (file) => {
      const bytes = new Uint8Array(readFileSync(`${folder}/${file}`));
      const before = await readIfc(bytes, { fileName: file, kernel });
      // Models without rooms have nowhere to hang a detector.
      if ("problems" in before || before.survey.rooms.length === 0) {
        expect(file).toMatch(/odd-japanese|luminaires|tall-building/);
        return;
      }
      const done = await filled(bytes);
      await expectSame(done, done.into);
      expect(bareBodies(done.into)).toBeGreaterThanOrEqual(done.site.detectors.length);
    },
  );
});
