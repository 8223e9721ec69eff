import { describe, expect, test } from "vitest";
import type { FoundCircuit, FoundInstallation, Site } from "#engine";
import { demoJob, siteOf } from "#job";
import { wiringKnown } from "./wiring-known.ts";

/** The demo without what it says of circuits itself. */
const bare: Site = (() => {
  const { site } = siteOf({ ...demoJob(), boards: [], circuits: [] });
  return {
    ...site,
    luminaires: site.luminaires.map(({ circuit: _, ...one }) => ({ ...one, power: 20 })),
    detectors: site.detectors.map(({ circuit: _, luminaires: __, ...one }) => one),
  };
})();
const [first] = bare.luminaires;
const room = bare.rooms.find(({ id }) => id === first!.room)!;
const inRoom = bare.luminaires.filter((one) => one.room === room.id);
const circuit: FoundCircuit = {
  id: "c1",
  name: "Lighting 1",
  board: "b1",
  breaker: "B",
  rating: 10,
  rcd: "unknown",
  protectiveConductor: "yes",
  sharedNeutral: "no",
  cable: { section: 1.5, length: 20, cores: 3 },
};
const found: FoundInstallation = {
  boards: [
    { id: "b1", name: "Board 1", storey: room.storey, at: [0, 0], system: "TN-S", readings: "assumed" },
  ],
  circuits: [circuit],
};
const site: Site = {
  ...bare,
  luminaires: bare.luminaires.map((one) => (one.room === room.id ? { ...one, circuit: "Lighting 1" } : one)),
};

describe("what the screen knows of the wiring", () => {
  test("nothing on record: no review, no finding, no line", () => {
    const plain = {
      ...bare,
      luminaires: bare.luminaires.map(({ power: _, drivers: __, inrush: ___, ...one }) => one),
    };
    expect(wiringKnown({ site: plain, found: { boards: [], circuits: [] }, routes: true })).toEqual({
      review: undefined,
      findings: [],
      circuits: new Map(),
      runs: [],
      groups: [],
    });
  });

  test("a circuit names the luminaires on it, and its lines join them with their board", () => {
    const known = wiringKnown({ site, found, routes: true });
    expect(known.circuits.get("c1")?.luminaires.toSorted()).toEqual(inRoom.map(({ id }) => id).toSorted());
    const [feed] = known.runs.filter(({ kind, circuit: of }) => kind === "feeds" && of === "c1");
    const joined = new Set(feed!.lines.flat().map(String));
    expect(inRoom.every(({ at }) => joined.has(String(at)))).toBe(true);
    expect(joined.has("0,0")).toBe(true);
    expect(feed!.storey).toBe(room.storey);
  });

  test("a board on another storey is not joined by a line of this one", () => {
    const away = { ...found, boards: [{ ...found.boards[0]!, storey: "elsewhere" }] };
    const [feed] = wiringKnown({ site, found: away, routes: true }).runs.filter(
      ({ kind }) => kind === "feeds",
    );
    expect(new Set(feed!.lines.flat().map(String)).has("0,0")).toBe(false);
  });

  test("a board with a place gives its circuit a length along the plan, one without gives none", () => {
    const at = { ...found, boards: [{ ...found.boards[0]!, at: inRoom[0]!.at }] };
    const along = wiringKnown({ site, found: at, routes: true }).circuits.get("c1")?.derived?.toLast;
    expect(along).toBeGreaterThan(0);
    const { at: _, ...nowhere } = found.boards[0]!;
    const without = wiringKnown({ site, found: { ...found, boards: [nowhere] }, routes: true });
    expect(without.circuits.get("c1")?.derived?.toLast).toBeUndefined();
    // What belongs together is joined all the same.
    expect(without.runs.some(({ kind, circuit: of }) => kind === "feeds" && of === "c1")).toBe(true);
  });

  test("the cable of a circuit passes the place that a person pinned", () => {
    const boards = [{ ...found.boards[0]!, at: inRoom[0]!.at }];
    const pinned: readonly [number, number] = [inRoom[0]!.at[0] + 0.31, inRoom[0]!.at[1] + 0.17];
    const passes = (via?: FoundCircuit["via"]): boolean =>
      wiringKnown({
        site,
        found: { boards, circuits: [{ ...circuit, ...(via ? { via } : {}) }] },
        routes: true,
      })
        .runs.flatMap(({ lines }) => lines.flat())
        .some(([x, y]) => Math.hypot(x - pinned[0], y - pinned[1]) < 1e-6);
    expect(passes()).toBe(false);
    expect(passes([pinned])).toBe(true);
  });

  test("a finding about a circuit speaks of its luminaires and has a place among them", () => {
    const long = { ...found, circuits: [{ ...circuit, cable: { ...circuit.cable, length: 900 } }] };
    const drop = wiringKnown({ site, found: long, routes: true }).findings.find(
      ({ code }) => code === "voltage-drop-too-large",
    );
    expect(drop?.severity).toBe("must");
    expect(drop?.records).toEqual(expect.arrayContaining(["c1", ...inRoom.map(({ id }) => id)]));
    expect(inRoom.map(({ at }) => String(at))).toContain(String(drop?.at));
    expect(drop?.room).toBe(room.id);
  });
});
