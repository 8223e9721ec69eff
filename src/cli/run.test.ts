import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Point, placeRoom } from "#engine";
import { parseJob } from "#job";
import { loadSolver } from "#solver";
import type { World } from "./command.ts";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-"));
  await writeFile(join(folder, "annex.job.json"), JSON.stringify(handWritten));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** Runs a command line and tells what came of it. */
const told = (words: readonly string[], more: Partial<World> = {}) => runHere(folder, words, more);

const codes = (json: { readonly problems: readonly { readonly code: string }[] }) =>
  json.problems.map((one) => one.code);

describe("What is wrong with a command is said in the same few words everywhere", () => {
  test.each([
    [["fly"], "command-unknown"],
    [["check"], "command-wrong"],
    [["check", "annex.job.json", "--wrong"], "command-wrong"],
    [["check", "a", "b"], "command-wrong"],
    [["place", "annex.job.json", "--seconds", "0"], "command-wrong"],
    [["place", "annex.job.json", "--seconds", "soon"], "command-wrong"],
    [["place", "annex.job.json", "--seconds", "-1"], "command-wrong"],
    [["zone", "annex.job.json", "--device", "d1", "--kind", "seated", "--spill"], "command-wrong"],
    [["place", "annex.job.json", "--model", "none"], "command-wrong"],
    [["zone", "annex.job.json", "--device", "d1", "--kind", "smell"], "command-wrong"],
    [["zone", "annex.job.json", "--device", "d1", "--kind", "towards", "--doors", "ajar"], "command-wrong"],
    [["pack", "annex.job.json"], "command-wrong"],
    [["import", "model.ifc"], "command-wrong"],
    [["start", "--port", "high"], "command-wrong"],
    [["check", "nowhere.job.json"], "file-unreadable"],
    [["check", "."], "file-unreadable"],
    [["place", "annex.job.json", "--room", "Attic"], "room-unknown"],
    [["zone", "annex.job.json", "--device", "B9", "--kind", "towards"], "detector-unknown"],
    [["place", "annex.job.json", "-o", "annex.job.json"], "output-exists"],
  ])("%j → %s, exit 2, JSON on standard output", async (words, code) => {
    const { exit, json, notes } = await told([...words, "--json"]);
    expect(exit).toBe(2);
    expect(codes(json())).toEqual([code]);
    expect(notes).toBe("");
  });

  test("Without --json the sentence and its remedy go to the notes, and standard output stays empty", async () => {
    const { exit, out, notes } = await told(["check", "nowhere.job.json"]);
    expect([exit, out]).toEqual([2, ""]);
    expect(notes).toContain("nowhere.job.json cannot be read: there is no such file or folder.");
  });

  test("A file that is no job is bad input", async () => {
    await writeFile(join(folder, "bad.job.json"), "{ not json");
    const { exit, json } = await told(["check", "bad.job.json", "--json"]);
    expect([exit, codes(json())]).toEqual([2, ["job-not-json"]]);
  });

  test("A name that two rooms have is not guessed at", async () => {
    const twins = { ...handWritten, rooms: handWritten.rooms.map((room) => ({ ...room, name: "Room" })) };
    await writeFile(join(folder, "twins.job.json"), JSON.stringify(twins));
    const { exit, json } = await told(["place", "twins.job.json", "--room", "room", "--json"]);
    expect([exit, codes(json())]).toEqual([2, ["room-ambiguous"]]);
  });

  test("A mistake of the program itself is exit 3", async () => {
    const { exit, json } = await told(["place", "annex.job.json", "--json"], {
      placeRooms: () => Promise.reject(new Error("a test made this")),
    });
    expect([exit, codes(json())]).toEqual([3, ["program-fault"]]);
  });

  test("A reason is one line, whatever it was made of", async () => {
    const { notes } = await told(["place", "annex.job.json", "--seconds", "-1"]);
    expect(notes.trimEnd().split("\n").length).toBe(2);
  });

  test("An output that cannot be written is said before the work, and nothing is left behind", async () => {
    await writeFile(join(folder, "file"), "");
    const { exit, json } = await told(["pack", "annex.job.json", "-o", "file/deeper", "--json"]);
    expect([exit, new Set(codes(json()))]).toEqual([2, new Set(["file-unwritable"])]);
    const work: string[] = [];
    for (const output of ["file/out.job.json", "."]) {
      const placed = await told(["place", "annex.job.json", "-o", output, "--force", "--json"], {
        placeRooms: async () => {
          work.push(output);
          return [];
        },
      });
      expect([placed.exit, codes(placed.json())]).toEqual([2, ["file-unwritable"]]);
    }
    expect(work).toEqual([]);
    expect((await readdir(folder)).sort()).toEqual(["annex.job.json", "file"]);
  });
});

test("Help lists every command with its exit codes, and each has help of its own", async () => {
  const { exit, out } = await told(["--help"]);
  expect(exit).toBe(0);
  for (const name of ["start", "import", "place", "check", "zone", "replay", "pack"]) {
    expect(out).toContain(`roomwake ${name}`);
    const own = await told([name, "--help"]);
    expect([own.exit, own.out.includes("--json")]).toEqual([0, true]);
  }
  expect((await told([])).exit).toBe(2);
});

test("check gives areas, gaps with causes, walks and findings; exit 1 while something must be mended", async () => {
  const { exit, json } = await told(["check", "annex.job.json", "--json"]);
  expect(exit).toBe(1);
  const { rooms, findings } = json();
  const [hall, store] = rooms;
  expect(Object.keys(hall)).toEqual([
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
  expect([hall.area, store.area]).toEqual([15, 11.6]);
  expect(hall.demand.catch).toBe(2);
  expect(hall.covered.walk).toBeGreaterThan(0);
  expect(store.covered.walk).toBe(0);
  expect(store.gaps[0].cause).toBe("no-device");
  expect(store.gaps[0].area).toBeCloseTo(store.demand.walk, 3);
  expect(hall.darkWalk.map((walk: { door: string }) => walk.door).sort()).toEqual(["between", "in"]);
  for (const finding of findings) {
    expect(["must", "should", "note"]).toContain(finding.severity);
    expect(finding.message).not.toMatch(/[{}]/);
  }
});

test("zone gives rings of [x, y]; their area by the shoelace rule is the area it says", async () => {
  const { exit, json } = await told([
    "zone",
    "annex.job.json",
    "--device",
    "b1.01",
    "--kind",
    "towards",
    "--json",
  ]);
  expect(exit).toBe(0);
  const { device, kind, polygons, area } = json();
  expect([device, kind]).toEqual(["d1", "towards"]);
  const shoelace = (ring: readonly Point[]): number =>
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
  const total = polygons.flat().reduce((sum: number, ring: readonly Point[]) => sum + shoelace(ring), 0);
  expect(total).toBeCloseTo(area, 3);
  // 4 m less 15 % covers a room of 5 × 3 m from its middle, doors closed.
  expect(area).toBeCloseTo(15, 2);
});

test("zone with open doors reaches farther than with closed ones, and spill at least as far", async () => {
  const area = async (...more: readonly string[]): Promise<number> =>
    (await told(["zone", "annex.job.json", "--device", "d1", "--json", ...more])).json().area;
  const closed = await area("--kind", "towards", "--doors", "closed");
  const open = await area("--kind", "towards", "--doors", "open");
  expect(open).toBeGreaterThan(closed + 0.1);
  expect(await area("--spill")).toBeGreaterThan(open);
});

test("place writes a job that check finds nothing to mend in, and says the same devices as the file", async () => {
  const placed = await told(["place", "annex.job.json", "-o", "placed.job.json", "--seconds", "5", "--json"]);
  expect(placed.exit).toBe(0);
  const { rooms, seconds } = placed.json();
  expect(seconds).toBeGreaterThan(0);
  const parsed = parseJob(await readFile(join(folder, "placed.job.json"), "utf8"));
  expect(parsed.problems).toBeUndefined();
  for (const room of rooms) {
    expect(room.devices.length).toBe(1);
    expect([room.fewest, room.gaps]).toEqual([true, []]);
    expect(room.bound).toBeLessThanOrEqual(room.cost);
    const inFile = parsed.job!.detectors.filter((one) => one.room === room.id);
    expect(inFile.map((one) => [one.id, ...one.at])).toEqual(
      room.devices.map((one: { id: string; x: number; y: number }) => [one.id, one.x, one.y]),
    );
  }
  const again = await told(["place", "annex.job.json", "-o", "placed.job.json", "--seconds", "5", "--json"]);
  expect([again.exit, codes(again.json())]).toEqual([2, ["output-exists"]]);
  expect((await told(["check", "placed.job.json"])).exit).toBe(0);
}, 120_000);

test("place of one room leaves the detectors of the others alone, and writes nothing without -o", async () => {
  const before = await readdir(folder);
  const { json } = await told(["place", "annex.job.json", "--room", "0.2 store", "--seconds", "5", "--json"]);
  expect(json().rooms.map((room: { id: string }) => room.id)).toEqual(["store"]);
  expect(await readdir(folder)).toEqual(before);
});

test("Stopped while placing: exit 130, and what was found so far is in the file", async () => {
  const cancel = new AbortController();
  const { exit, json } = await told(
    ["place", "annex.job.json", "-o", "part.job.json", "--seconds", "5", "--json"],
    {
      cancelled: cancel.signal,
      placeRooms: async (site, work) => {
        const options = work.rooms.find((room) => room.room === "store")!;
        const result = await placeRoom(site, options, {
          solver: await loadSolver(),
          now: () => performance.now() / 1000,
          cancelled: () => false,
          progress: () => {},
          breathe: async () => {},
        });
        cancel.abort();
        return [result];
      },
    },
  );
  expect(exit).toBe(130);
  expect(json().cancelled).toBe(true);
  expect(codes(json())).toContain("placing-cancelled");
  const parsed = parseJob(await readFile(join(folder, "part.job.json"), "utf8"));
  expect(parsed.job!.detectors.some((one) => one.room === "store")).toBe(true);
  expect(parsed.job!.detectors.some((one) => one.id === "d1")).toBe(true);
});

test("Reading a model can be stopped, and then nothing is written", async () => {
  await writeFile(join(folder, "model.ifc"), "ISO-10303-21;\n");
  const { exit, json } = await told(["import", "model.ifc", "-o", "model.job.json", "--json"], {
    cancelled: AbortSignal.abort(),
  });
  expect([exit, codes(json())]).toEqual([130, ["reading-cancelled"]]);
  expect(await readdir(folder)).not.toContain("model.job.json");
});

test("pack writes plans, setting-out sheets and the schedule; twice the same bytes; --force needed to replace", async () => {
  const first = await told(["pack", "annex.job.json", "-o", "a", "--json"]);
  expect(first.json().files).toEqual([
    "handover.pdf",
    "plan-ground-floor.svg",
    "plan-ground-floor.pdf",
    "setting-out-ground-floor.svg",
    "setting-out-ground-floor.pdf",
    "setting-sheets.svg",
    "setting-sheets.pdf",
    "quote-1.svg",
    "quote-2.svg",
    "quote.pdf",
    "labels.svg",
    "labels.pdf",
    "room-cards.svg",
    "room-cards.pdf",
    "plan-ground-floor.dxf",
    "building.ifc",
    "device-schedule.csv",
    "schedules.xlsx",
    "materials.csv",
    "materials.xlsx",
    "price-list.csv",
    "quote.csv",
  ]);
  await told(["pack", "annex.job.json", "-o", "b", "--json"]);
  for (const file of first.json().files)
    expect(
      Buffer.compare(await readFile(join(folder, "a", file)), await readFile(join(folder, "b", file))),
    ).toBe(0);
  const again = await told(["pack", "annex.job.json", "-o", "a", "--json"]);
  expect([again.exit, new Set(codes(again.json()))]).toEqual([2, new Set(["output-exists"])]);
  expect((await told(["pack", "annex.job.json", "-o", "a", "--json", "--force"])).exit).toBe(first.exit);
  expect((await readdir(join(folder, "a"))).length).toBe(first.json().files.length);
});

test("Progress is shown to somebody who watches, and to nobody else", async () => {
  const watched = await told(["check", "annex.job.json", "--json"], { watched: true });
  expect(watched.notes).toContain("checked 2 of 2 rooms");
  expect(() => watched.json()).not.toThrow();
  expect((await told(["check", "annex.job.json", "--json"])).notes).toBe("");
});
