import { isDeepStrictEqual } from "node:util";
import { expect, test } from "vitest";
import { findingsOf, reviewWiring, settingsOfSite, shippedPacks } from "#engine";
import {
  correctedDemoJob,
  demoJob,
  demoModels,
  installationOf,
  type JobFile,
  jobText,
  parseJob,
  settingsOfJob,
  siteOf,
} from "../index.ts";
import { siteFaults } from "./demo-faults.ts";

test("the demo reads without a note and makes a site without a problem", () => {
  const read = parseJob(jobText(demoJob()));
  expect(read.job && read.notes).toEqual([]);
  expect(siteOf(demoJob()).problems).toEqual([]);
});

test("the demo has a room for everything that the program can do", () => {
  const { site } = siteOf(demoJob());
  expect(new Set(site.rooms.map((room) => room.use))).toEqual(
    new Set(["passing", "stair", "moving", "sitting", "sanitary", "changing", "plant"]),
  );
  expect(new Set(site.obstacles.map((obstacle) => obstacle.kind))).toEqual(
    new Set(["rack", "partition", "glass", "cubicle", "column", "duct", "beam", "furniture", "other"]),
  );
  expect(new Set(site.dwellPlaces.map((place) => place.kind))).toEqual(
    new Set(["desk", "seat", "wc", "bench", "basin", "panel", "machine"]),
  );
  expect(new Set(site.interference.map((source) => source.kind))).toEqual(
    new Set(["heater", "air-outlet", "machine", "sunlit-window", "door-curtain"]),
  );
  expect(site.floorPieces.filter((piece) => piece.kind === "flight").length).toBe(2);
  expect(site.rooms.find((room) => room.id === "drying")?.highestTemperature).toBe(32);
  expect(site.rooms.find((room) => room.id === "luggage")?.outline.length).toBe(6);
});

test("every door of the demo lies on the wall of its first room, and its far side on the wall of its second", () => {
  const { site } = siteOf(demoJob());
  for (const opening of site.openings) {
    const [first, second] = opening.rooms.map((id) => site.rooms.find((room) => room.id === id));
    const middle: [number, number] = [
      (opening.from[0] + opening.to[0]) / 2,
      (opening.from[1] + opening.to[1]) / 2,
    ];
    expect({ id: opening.id, off: distance(middle, first!.outline) < 1e-6 }).toEqual({
      id: opening.id,
      off: true,
    });
    if (second)
      expect({
        id: opening.id,
        off: Math.abs(distance(middle, second.outline) - opening.thickness) < 1e-6,
      }).toEqual({
        id: opening.id,
        off: true,
      });
  }
});

test("the models of the demo are invented, 6 to 24 m across, for ceilings up to 12 m, some of them hearing", () => {
  const { models } = siteOf({ ...demoJob(), detectors: [] }).site;
  expect(models.map((model) => model.id)).toEqual(demoModels.map((model) => model.id));
  expect(models.every((model) => model.demo && model.declaredBy === "invented for the demo")).toBe(true);
  const across = models.map((model) =>
    Math.max(
      ...model.zones.across!.map((row) =>
        "radius" in row ? row.radius : Math.max(...row.outline.map(([, radius]) => radius)),
      ),
    ),
  );
  expect([Math.min(...across) >= 3, Math.max(...across) >= 12]).toEqual([true, true]);
  expect(Math.max(...models.map((model) => model.mounting.max))).toBe(12);
  expect(models.filter((model) => model.zones.sound).length).toBe(2);
  for (const model of models)
    for (const rows of Object.values(model.zones))
      for (const row of rows)
        expect(row.height >= model.mounting.min && row.height <= model.mounting.max).toBe(true);
});

test("common practice, no source: what hangs in ordinary rooms is declared for 2.5 to 3 m, and only halls ask for more", () => {
  const { site } = siteOf(demoJob());
  const ordinary = site.models.filter(({ mounting }) => mounting.min <= 2.5 && mounting.max >= 3);
  expect(ordinary.length).toBe(site.models.length - 2);
  for (const { model, height } of site.detectors) {
    expect(ordinary.map(({ id }) => id)).toContain(model);
    expect(height >= 2.5 && height <= 3).toBe(true);
  }
});

function distance(
  [x, y]: readonly [number, number],
  outline: readonly (readonly [number, number])[],
): number {
  return Math.min(
    ...outline.map(([ax, ay], index) => {
      const [bx, by] = outline[(index + 1) % outline.length]!;
      const share = Math.min(
        1,
        Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)),
      );
      return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay));
    }),
  );
}

const reviewed = (job: JobFile) => reviewWiring(siteOf(job).site, installationOf(job))!;

test("the wiring of the demo has mistakes of every severity, each where somebody made it", () => {
  const found = findingsOf(reviewed(demoJob()).problems).map(
    ({ severity, code, records }) => `${severity} ${code}: ${[...records].sort().join(", ")}`,
  );
  expect(found).toEqual(
    expect.arrayContaining([
      "must contact-inrush-too-large: corridor-east, corridor-west",
      "must neutral-borrowed: lighting-5",
      "must button-wired-wrong: meeting-button, meeting-table",
      "should standing-leakage-too-large: lighting-2, lighting-3",
      "note wiring-not-proven: lighting-5",
    ]),
  );
});

test("with its mistakes mended nothing of the demo's wiring fails and nothing is left unproven", () => {
  const { circuits, problems } = reviewed(correctedDemoJob());
  expect(problems).toEqual([]);
  expect(circuits.map(({ luminaires }) => luminaires)).toEqual([16, 16, 16, 12, 7]);
  const verdicts = circuits.flatMap(({ checks }) => checks.map(({ verdict }) => verdict));
  expect([verdicts.length, new Set(verdicts)]).toEqual([50, new Set(["pass"])]);
});

test("the settings of the demo contradict each other in one place, and nowhere once they are mended", () => {
  const contradictions = (job: JobFile) =>
    settingsOfSite(siteOf(job).site, settingsOfJob(job, shippedPacks).choices).findings.filter(
      ({ severity }) => severity !== "note",
    );
  expect(contradictions(demoJob()).map(({ code, records }) => [code, [...records].sort()])).toEqual([
    ["parallel-delays-differ", ["corridor-east", "corridor-west"]],
  ]);
  expect(contradictions(correctedDemoJob())).toEqual([]);
});

test("the corrected demo is a job of its own, the same building with the same detectors in the same places", () => {
  const [found, mended] = [demoJob(), correctedDemoJob()];
  expect(mended.id).not.toBe(found.id);
  for (const kind of ["storeys", "rooms", "openings", "obstacles", "luminaires", "models", "boards"] as const)
    expect(mended[kind]).toEqual(found[kind]);
  const hung = (job: JobFile) =>
    job.detectors.map(({ id, at, height, model }) => ({ id, at, height, model }));
  expect(hung(mended)).toEqual(hung(found));
  expect(siteOf(mended).problems).toEqual([]);
});

test("every mistake of the demo changes the job, and its way out leads to the corrected twin", () => {
  expect(siteFaults.length).toBeGreaterThan(0);
  for (const { mistake, found, mended } of siteFaults) {
    const changed = [found, mended].flatMap((changes) =>
      Object.entries(changes).flatMap(([kind, records]) => Object.keys(records).map((id) => ({ kind, id }))),
    );
    const records = (job: JobFile) =>
      changed.map(({ kind, id }) =>
        (job[kind as "circuits"] as readonly { readonly id: string }[]).find((one) => one.id === id),
      );
    expect({ mistake, same: isDeepStrictEqual(records(demoJob()), records(correctedDemoJob())) }).toEqual({
      mistake,
      same: false,
    });
  }
});
