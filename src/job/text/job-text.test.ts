import fc from "fast-check";
import { expect, test } from "vitest";
import { demoJob, emptyJob, type JobFile, jobText, parseJob } from "../index.ts";

const metre = fc.double({ min: -1000, max: 1000, noNaN: true }).map((value) => value + 0);
const text = fc.string({ maxLength: 12 });
const unknown = fc.dictionary(
  fc.string({ minLength: 1, maxLength: 6 }).map((name) => `x-${name}`),
  fc.oneof(text, fc.integer(), fc.constant(null), fc.array(fc.integer(), { maxLength: 4 })),
  { maxKeys: 2 },
);
/** A room around a corner, any size, with whatever else a newer version may add. */
const room = fc
  .tuple(fc.uuid(), text, metre, metre, fc.double({ min: 0.5, max: 50, noNaN: true }), unknown)
  .map(([id, name, x, y, size, extra]) => ({
    ...extra,
    id,
    storey: "s",
    name,
    outline: [
      [x, y],
      [x + size, y],
      [x + size, y + size],
      [x, y + size],
    ],
    ceilingHeight: size,
  }));
const time = fc.double({ min: 0.1, max: 10_000, noNaN: true });
const grade = fc.constantFrom("low", "medium", "high");
/** Any of a detector's settings chosen, any of them not, and some that a newer version adds. */
const settings = fc
  .tuple(
    fc.record(
      {
        mode: fc.constantFrom("automatic", "semi-automatic"),
        buttonRole: fc.constantFrom("on-only", "on-and-off"),
        offDelay: time,
        impulse: fc.oneof(fc.constant("none"), fc.record({ pulse: time, pause: time })),
        brightnessThreshold: fc.oneof(fc.constant("off"), fc.integer({ min: 1, max: 2000 })),
        sensitivity: grade,
        soundSensitivity: fc.oneof(fc.constant("off"), grade),
        lock: fc.constantFrom("open", "locked"),
        groupRole: fc.constantFrom("alone", "master", "slave", "parallel"),
      },
      { requiredKeys: [] },
    ),
    unknown,
  )
  .map(([chosen, extra]) => ({ ...extra, ...chosen }));
const model = { id: "m", zones: { towards: [{ height: 2.5, radius: 4 }] } };
const job = fc
  .tuple(
    text,
    fc.uniqueArray(fc.tuple(room, fc.option(settings, { nil: undefined })), {
      maxLength: 4,
      selector: ([one]) => one.id,
    }),
    unknown,
  )
  .map(
    ([name, rooms, extra]) =>
      parseJob({
        ...extra,
        ...emptyJob(name),
        storeys: [{ id: "s", elevation: 0 }],
        rooms: rooms.map(([one]) => one),
        models: [model],
        detectors: rooms.map(([one, chosen]) => ({
          id: `d-${one.id}`,
          room: one.id,
          model: "m",
          at: one.outline[0],
          ...(chosen && { settings: chosen }),
        })),
      }).job!,
  );

test("save then load is the identity, unknown fields included", () => {
  fc.assert(
    fc.property(job, (one: JobFile) => {
      expect(parseJob(jobText(one)).job).toEqual(one);
      expect(jobText(parseJob(jobText(one)).job!)).toBe(jobText(one));
    }),
    { seed: 20260303, numRuns: 100 },
  );
});

test("the text does not depend on the order in which fields were set", () => {
  const demo = demoJob();
  const turned = Object.fromEntries(Object.entries(demo).reverse()) as unknown as JobFile;
  expect(jobText(turned)).toBe(jobText(demo));
});

test("a point, a short outline and a small record stand on one line", () => {
  const lines = jobText(demoJob()).split("\n");
  expect(lines).toContain('   "outline": [[0, 4], [5, 4], [5, 9.8], [0, 9.8]],');
  expect(lines).toContain('  { "id": "ground", "name": "Ground floor", "elevation": 0 },');
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThan(130);
});

test("a number that is none is a programmer's mistake", () => {
  expect(() => jobText({ ...emptyJob("x"), defaults: { speed: Number.NaN } })).toThrow("finite");
});
