import { beforeAll, describe, expect, test } from "vitest";
import { say } from "#engine";
import { bytesOf, type WrittenBuilding, writtenBuilding } from "../../../test/exchange/written-building.ts";
import { ringArea } from "../region.ts";
import type { ImportReport, SurveyRecords } from "../survey.ts";
import { type GeometryKernel, loadKernel } from "./kernel.ts";
import { readIfc } from "./read-ifc.ts";

let kernel: GeometryKernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const read = async (choice: WrittenBuilding): Promise<{ survey: SurveyRecords; report: ImportReport }> => {
  const result = await readIfc(bytesOf(writtenBuilding(choice)), { fileName: "written.ifc", kernel });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result;
};

const choices: readonly (readonly [string, WrittenBuilding])[] = [
  ["IFC 2x3 in metres", { schema: "IFC2X3", unit: "metre" }],
  ["IFC 2x3 in millimetres", { schema: "IFC2X3", unit: "milli" }],
  ["IFC4 in feet", { schema: "IFC4", unit: "foot" }],
  ["IFC4 in millimetres", { schema: "IFC4", unit: "milli" }],
];

describe.each(choices)("the two-room plan written as %s", (_, choice) => {
  let survey: SurveyRecords;
  let report: ImportReport;
  beforeAll(async () => {
    ({ survey, report } = await read(choice));
  });

  test("has its storey at its elevation", () => {
    expect(report.storeys).toEqual([{ name: "Ground floor", elevation: 0.5, rooms: 2 }]);
  });

  test("has its rooms with name, number, use, outline to the millimetre, hole and height", () => {
    const [office, store] = survey.rooms;
    expect(survey.rooms.map(({ name, number, use }) => ({ name, number, use }))).toEqual([
      { name: "Office", number: "1.01", use: "sitting" },
      { name: "Store", number: "1.02", use: "moving" },
    ]);
    expect(sorted(office!.outline)).toEqual([
      [0, 0],
      [0, 3],
      [4, 0],
      [4, 3],
    ]);
    expect(sorted(store!.outline)).toEqual([
      [4.1, 0],
      [4.1, 3],
      [9.1, 0],
      [9.1, 3],
    ]);
    expect(store!.holes.map(sorted)).toEqual([
      [
        [6.1, 1],
        [6.1, 1.4],
        [6.5, 1],
        [6.5, 1.4],
      ],
    ]);
    expect(survey.rooms.map((room) => room.ceilingHeight)).toEqual([2.6, 2.6]);
    expect(survey.rooms.map((room) => room.floor)).toEqual([0, 0]);
    expect(report.rooms.map((room) => room.area)).toEqual([expect.closeTo(12, 6), expect.closeTo(14.84, 6)]);
  });

  test("has outlines counter-clockwise and holes clockwise", () => {
    expect(
      survey.rooms.every(
        (room) => ringArea(room.outline) > 0 && room.holes.every((hole) => ringArea(hole) < 0),
      ),
    ).toBe(true);
  });

  test("joins the door to both rooms, as thick as the wall between them, swinging as the file says", () => {
    const [office, store] = survey.rooms;
    const doors = survey.openings.filter((opening) => opening.kind === "door");
    expect(doors).toHaveLength(1);
    expect(doors[0]).toMatchObject({
      rooms: [office!.id, store!.id],
      from: [4, 1],
      to: [4, 1.9],
      sill: 0,
      head: 2.1,
      thickness: 0.1,
      hinge: "from",
      opensInto: office!.id,
    });
  });

  test("joins the window to its room and the outside", () => {
    expect(survey.openings.filter((opening) => opening.kind === "window")).toMatchObject([
      { rooms: [survey.rooms[0]!.id, null], from: [1, 0], to: [2, 0], sill: 0.9, head: 2.1, thickness: 0.3 },
    ]);
  });

  test("has the furniture as obstacles with base and top in the rooms they stand in", () => {
    const [office, store] = survey.rooms;
    expect(
      survey.obstacles.map(({ name, kind, room, base, top }) => ({ name, kind, room, base, top })),
    ).toEqual([
      { name: "Desk", kind: "furniture", room: office!.id, base: 0, top: 0.72 },
      { name: "Cupboard", kind: "rack", room: store!.id, base: 0, top: 2 },
    ]);
    expect(sorted(survey.obstacles[0]!.footprint)).toEqual([
      [1, 1.6],
      [1, 2.4],
      [2.6, 1.6],
      [2.6, 2.4],
    ]);
  });

  test("puts a place to sit before the desk, on the side away from the wall", () => {
    expect(survey.dwellPlaces).toMatchObject([{ kind: "desk", room: survey.rooms[0]!.id, at: [1.8, 1.3] }]);
    expect(report.notes.map((note) => note.code)).toContain("ifc-dwell-guessed");
  });

  test("has the luminaire and leaves out the switch that was typed as one", () => {
    expect(survey.luminaires).toMatchObject([
      {
        name: "Linear luminaire",
        room: survey.rooms[0]!.id,
        at: [2, 1.5],
        height: 2.5,
        mounting: "surface",
        length: 1.2,
        width: 0.3,
      },
    ]);
    expect(report.luminaires).toBe(1);
    expect(report.leftOut).toContainEqual({
      what: say`switch or socket`,
      why: say`the model calls it a luminaire, its name does not`,
      count: 1,
    });
  });
});

describe("placing", () => {
  test("a building turned by 30° gives the same rooms, turned", async () => {
    const turn = Math.PI / 6;
    const { survey } = await read({ schema: "IFC4", unit: "metre", turn });
    const back = (p: readonly [number, number]): [number, number] => [
      round(p[0] * Math.cos(turn) + p[1] * Math.sin(turn)),
      round(-p[0] * Math.sin(turn) + p[1] * Math.cos(turn)),
    ];
    expect(sorted(survey.rooms[0]!.outline.map(back))).toEqual([
      [0, 0],
      [0, 3],
      [4, 0],
      [4, 3],
    ]);
    const door = survey.openings.find((opening) => opening.kind === "door")!;
    expect([back(door.from), back(door.to), door.thickness]).toEqual([[4, 1], [4, 1.9], 0.1]);
    expect(survey.luminaires[0]!.turn).toBeCloseTo(turn, 3);
  });

  test("a building on a country's grid is shifted by whole metres, which are recorded, and stays exact", async () => {
    const { survey } = await read({ schema: "IFC2X3", unit: "milli", at: [456_123.25, 5_428_000.5, 110] });
    expect(survey.shift).toEqual([456_123, 5_428_000]);
    expect(sorted(survey.rooms[0]!.outline)).toEqual([
      [0.25, 0.5],
      [0.25, 3.5],
      [4.25, 0.5],
      [4.25, 3.5],
    ]);
    expect(survey.rooms[0]!.floor).toBe(0);
    expect(survey.openings.find((opening) => opening.kind === "door")).toMatchObject({
      from: [4.25, 1.5],
      to: [4.25, 2.4],
    });
    expect(survey.luminaires[0]!.at).toEqual([2.25, 2]);
  });

  test("two buildings keep their storeys apart, by name", async () => {
    const { survey, report } = await read({ schema: "IFC4", unit: "metre", buildings: 2 });
    expect(report.storeys.map((storey) => [storey.name, storey.rooms])).toEqual([
      ["House 1, Ground floor", 2],
      ["House 2, Ground floor", 2],
    ]);
    expect(survey.rooms.map((room) => Math.min(...room.outline.map((p) => p[0])))).toEqual([
      0, 4.1, 20, 24.1,
    ]);
  });

  test("a file without storeys gets one, with a note", async () => {
    const { report, survey } = await read({ schema: "IFC2X3", unit: "metre", storeys: "none" });
    expect(report.storeys).toEqual([{ name: "Storey 1", elevation: 0, rooms: 2 }]);
    expect(survey.rooms.map((room) => room.floor)).toEqual([0, 0]);
    expect(report.notes.map((note) => note.code)).toContain("ifc-no-storeys");
  });

  test("a file without a unit is read in metres and says so", async () => {
    const { report } = await read({ schema: "IFC4", unit: "none" });
    expect(report.rooms[0]!.area).toBeCloseTo(12, 6);
    expect(report.notes.map((note) => note.code)).toContain("ifc-no-unit");
  });
});

describe("a file without rooms", () => {
  test("says so and gives its walls as an underlay", async () => {
    const { survey, report } = await read({ schema: "IFC2X3", unit: "metre", rooms: "none" });
    expect(survey.rooms).toEqual([]);
    expect(report.notes.map((note) => note.code)).toContain("ifc-no-rooms");
    expect(survey.drawings).toHaveLength(1);
    expect(ringsIn(survey.drawings[0]!.lines).map(ringArea).sort()).toEqual([
      expect.closeTo(0.3, 4),
      expect.closeTo(2.73, 4),
    ]);
  });
});

/** Closed rings of lines that follow one another. */
function ringsIn(lines: Float64Array): [number, number][][] {
  const rings: [number, number][][] = [];
  let ring: [number, number][] = [];
  for (let i = 0; i < lines.length; i += 4) {
    ring.push([lines[i]!, lines[i + 1]!]);
    if (lines[i + 2] !== ring[0]![0] || lines[i + 3] !== ring[0]![1]) continue;
    rings.push(ring);
    ring = [];
  }
  return rings;
}

const round = (metres: number): number => Math.round(metres * 1000) / 1000 + 0;
const sorted = (ring: readonly (readonly [number, number])[]): [number, number][] =>
  ring.map((p): [number, number] => [round(p[0]), round(p[1])]).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
