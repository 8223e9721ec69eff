import { expect, test } from "vitest";
import { demoJob, emptyJob } from "#job";
import { planPicture } from "./plan-picture.ts";

const places = (path: string): readonly number[][] =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

test("a job without rooms has no picture", () => {
  expect(planPicture(emptyJob("x"))).toBeUndefined();
});

test("everything of the largest storey lies inside the frame, and reaches it in one direction", () => {
  const job = demoJob();
  const picture = planPicture(job)!;
  const all = places(picture.rooms);
  const [xs, ys] = [all.map(([x]) => x!), all.map(([, y]) => y!)];
  expect(Math.min(...xs, ...ys)).toBeGreaterThanOrEqual(5);
  expect(Math.max(...xs)).toBeLessThanOrEqual(115);
  expect(Math.max(...ys)).toBeLessThanOrEqual(75);
  expect(Math.max(...xs) === 115 || Math.max(...ys) === 75).toBe(true);
  expect(picture.count).toBe(job.rooms.length);
  const ground = job.rooms.filter(({ storey }) => storey === "ground").map(({ id }) => id);
  expect(picture.rooms.match(/M/g)!.length).toBeGreaterThanOrEqual(ground.length);
  expect(picture.devices.length).toBe(job.detectors.filter(({ room }) => ground.includes(room)).length);
});

test("moving the plan's origin changes nothing of its picture", () => {
  const job = demoJob();
  const far = ([x, y]: readonly [number, number]): [number, number] => [x + 5000, y - 3000];
  const moved = {
    rooms: job.rooms.map((room) => ({
      ...room,
      outline: room.outline.map(far),
      holes: room.holes.map((ring) => ring.map(far)),
    })),
    openings: job.openings.map((opening) => ({ ...opening, from: far(opening.from), to: far(opening.to) })),
    detectors: job.detectors.map((device) => ({ ...device, at: far(device.at) })),
  };
  const [one, two] = [planPicture(job)!, planPicture(moved)!];
  const apart = places(one.rooms).map(([x, y], i) =>
    Math.hypot(x! - places(two.rooms)[i]![0]!, y! - places(two.rooms)[i]![1]!),
  );
  // A tenth may round the other way.
  expect(Math.max(...apart)).toBeLessThan(0.15);
});
