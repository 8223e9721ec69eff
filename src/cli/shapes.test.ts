import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writtenBuilding } from "../../test/exchange/written-building.ts";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

// What other programs read: the keys of every answer, one by one, in every list that is there.

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-shapes-"));
  const interference = [{ id: "warm", room: "hall", kind: "heater", at: [4.5, 1.5], height: 1 }];
  await writeFile(join(folder, "annex.job.json"), JSON.stringify({ ...handWritten, interference }));
  await writeFile(join(folder, "house.ifc"), writtenBuilding({ schema: "IFC4", unit: "milli" }));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

type Json = Readonly<Record<string, unknown>>;

async function answered(...words: readonly string[]): Promise<Json> {
  const { exit, json } = await runHere(folder, [...words, "--json"]);
  expect([0, 1]).toContain(exit);
  return json();
}

/** The keys that all members of a list have; a list without members would show nothing and is refused. */
function keysOf(list: unknown): readonly string[] {
  const members = list as readonly Json[];
  expect(members.length).toBeGreaterThan(0);
  const [first, ...others] = members.map((member) => Object.keys(member).join());
  for (const other of others) expect(other).toBe(first);
  return first!.split(",");
}

/** Keys that some member of a list has beyond the ones that all must have, which are given. */
function keysBeyond(list: unknown, all: readonly string[]): readonly string[] {
  const members = list as readonly Json[];
  expect(members.length).toBeGreaterThan(0);
  for (const member of members) expect(Object.keys(member)).toEqual(expect.arrayContaining([...all]));
  return [...new Set(members.flatMap((member) => Object.keys(member)))]
    .filter((key) => !all.includes(key))
    .sort();
}

const roomsOf = (answer: Json) => answer.rooms as readonly Json[];

test("import: storeys, rooms by the name of their storey, counts, what was left out, notes", async () => {
  const answer = await answered("import", "house.ifc", "-o", "house.job.json");
  expect(Object.keys(answer)).toEqual([
    "storeys",
    "rooms",
    "openings",
    "obstacles",
    "luminaires",
    "leftOut",
    "notes",
  ]);
  expect(keysOf(answer.storeys)).toEqual(["name", "elevation", "rooms"]);
  expect(keysOf(answer.rooms)).toEqual(["id", "name", "storey", "area", "height"]);
  expect(keysOf(answer.leftOut)).toEqual(["what", "why", "count"]);
  expect(keysOf(answer.notes)).toEqual(["code", "severity", "message", "remedy"]);
  for (const count of ["openings", "obstacles", "luminaires"]) expect(answer[count]).toBeTypeOf("number");
  const storeys = answer.storeys as readonly Json[];
  for (const storey of storeys)
    expect(roomsOf(answer).filter((room) => room.storey === storey.name).length).toBe(storey.rooms);
  const inFile = JSON.parse(await readFile(join(folder, "house.job.json"), "utf8"));
  expect(inFile.rooms.map((room: Json) => room.id).sort()).toEqual(
    roomsOf(answer)
      .map((room) => room.id)
      .sort(),
  );
}, 60_000);

test("place: rooms with devices, cost, bound and what it holds for, gaps and walks", async () => {
  const answer = await answered("place", "annex.job.json", "--seconds", "30", "-o", "placed.job.json");
  expect(Object.keys(answer)).toEqual(["rooms", "seconds", "problems"]);
  expect(keysOf(answer.rooms)).toEqual([
    "id",
    "name",
    "devices",
    "cost",
    "bound",
    "boundHolds",
    "fewest",
    "seconds",
    "gaps",
    "darkWalk",
  ]);
  for (const room of roomsOf(answer)) {
    expect(keysOf(room.devices)).toEqual(["id", "tag", "model", "x", "y", "height", "turn"]);
    expect(["candidates", "any-position"]).toContain(room.boundHolds);
    expect([typeof room.cost, typeof room.bound, typeof room.fewest, typeof room.seconds]).toEqual([
      "number",
      "number",
      "boolean",
      "number",
    ]);
    expect(room.gaps).toBeInstanceOf(Array);
    expect(keysBeyond(room.darkWalk, ["door", "metres", "lit", "toward"])).toEqual(["device"]);
  }
}, 60_000);

test("check: rooms with demand and cover, gaps with causes, spill, sources, walks; findings with evidence", async () => {
  const answer = await answered("check", "annex.job.json");
  expect(Object.keys(answer)).toEqual(["rooms", "wiring", "settings", "rulePacks", "rules", "findings"]);
  expect(keysOf(answer.rooms)).toEqual([
    "id",
    "name",
    "area",
    "demand",
    "covered",
    "gaps",
    "spill",
    "interference",
    "darkWalk",
  ]);
  const rooms = roomsOf(answer);
  expect(keysOf(rooms.map((room) => room.demand))).toEqual(["walk", "hold", "catch"]);
  expect(keysOf(rooms.map((room) => room.covered))).toEqual(["walk", "hold", "catch"]);
  const all = (key: string): unknown => rooms.flatMap((room) => room[key] as readonly Json[]);
  expect(
    keysBeyond(all("gaps"), ["area", "x", "y", "cause", "words", "demand", "tolerated"]).filter(
      (key) => !["behind", "device", "dwellPlace"].includes(key),
    ),
  ).toEqual([]);
  expect(keysOf(all("spill"))).toEqual(["room", "area", "devices"]);
  expect(keysOf(all("interference"))).toEqual(["source", "device", "distance"]);
  expect(keysBeyond(all("darkWalk"), ["door", "metres", "lit", "toward"])).toEqual(["device"]);
  const findings = ["code", "severity", "room", "message", "remedy", "evidence", "records"];
  expect(keysBeyond(answer.findings, findings)).toEqual(["x", "y"]);
});

test("zone: the device, what was asked of it, polygons as rings of [x, y], the area", async () => {
  const words = ["zone", "annex.job.json", "--device", "d1", "--kind", "towards"];
  const answer = await answered(...words);
  expect(Object.keys(answer)).toEqual(["device", "kind", "spill", "doors", "polygons", "area"]);
  expect([answer.device, answer.kind, answer.spill, answer.doors]).toEqual([
    "d1",
    "towards",
    false,
    "closed",
  ]);
  const polygons = answer.polygons as readonly (readonly (readonly (readonly number[])[])[])[];
  for (const point of polygons.flat(2))
    expect(point.map((length) => typeof length)).toEqual(["number", "number"]);
  expect(polygons.flat(2).length).toBeGreaterThan(2);
  const spill = await answered(...words, "--spill");
  expect(Object.keys(spill)).toEqual(Object.keys(answer));
  expect([spill.kind, spill.spill, spill.doors]).toEqual(["towards", true, "open"]);
});

test("replay: the log, loads with devices, delays, what is recommended and what was assumed, notes", async () => {
  await writeFile(join(folder, "log.csv"), "time,occupied\n2026-03-31 10:00,1\n2026-03-31 10:01,0\n");
  const answer = await answered("replay", "annex.job.json", "--log", "log.csv");
  expect(Object.keys(answer)).toEqual(["log", "loads", "findings"]);
  expect(keysOf([answer.log])).toEqual(["file", "begins", "rows", "step", "hours", "recordedHours"]);
  expect(keysOf(answer.loads)).toEqual([
    "rooms",
    "name",
    "devices",
    "power",
    "reference",
    "delays",
    "recommended",
    "assumptions",
  ]);
  const loads = answer.loads as readonly Json[];
  expect(keysOf(loads.flatMap((load) => load.devices as readonly Json[]))).toEqual([
    "id",
    "tag",
    "mode",
    "offMinutes",
    "derived",
  ]);
  expect(keysOf(loads.map((load) => load.reference))).toEqual(["what", "litHours", "energy"]);
  expect(keysOf(loads.flatMap((load) => load.delays as readonly Json[]))).toEqual([
    "minutes",
    "litHours",
    "switchOffs",
    "switchOffsWhileThere",
    "cyclesPerYear",
    "energy",
    "spared",
    "rows",
  ]);
  expect(keysOf(loads.map((load) => load.recommended))).toEqual(["minutes", "code", "message", "remedy"]);
});

test("pack: files, the sheets in them, findings as in check", async () => {
  const answer = await answered("pack", "annex.job.json", "-o", "pack");
  expect(Object.keys(answer)).toEqual(["files", "sheets", "noWiring", "findings"]);
  for (const file of answer.files as readonly unknown[]) expect(file).toBeTypeOf("string");
  expect(keysBeyond(answer.sheets, ["file", "page", "scale"])).toEqual(["title"]);
  const checked = await answered("check", "annex.job.json");
  expect(answer.findings).toEqual(checked.findings);
});

test("an error: problems, each with its code, its severity, a sentence and a remedy", async () => {
  const { exit, json } = await runHere(folder, ["check", "nowhere.job.json", "--json"]);
  const answer = json();
  expect([exit, Object.keys(answer)]).toEqual([2, ["problems"]]);
  expect(keysOf(answer.problems)).toEqual(["code", "severity", "message", "remedy"]);
});
