import { expect, test } from "vitest";
import { demoJob, demoModels, jobText, parseJob, siteOf } from "../index.ts";

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
