import { describe, expect, test } from "vitest";
import { areaOf, boundsOf, contains, type Outline, type Point, ringsOf } from "../geometry/index.ts";
import { type Interference, type Opening, planningDefaults, type Room, type Site } from "../site/index.ts";
import { dice, randomStorey } from "./random-storey.fixture.ts";
import { sceneOf } from "./scene.ts";
import { seesSource, spillZone } from "./spill-zone.ts";
import { unseenReason } from "./unseen-reason.ts";
import { declaredZone, deviceZone, watchZone, zoneInScene } from "./zone.ts";
import type { DeviceLike } from "./zone-types.ts";

const square = (x: number, y: number, w: number, h: number): Outline => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];
const room = (id: string, outline: Outline): Room => ({
  id,
  storey: "s",
  number: id,
  name: "Room",
  use: "other",
  outline,
  holes: [],
  floor: 0,
  ceilingHeight: 2.8,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});
const door: Opening = {
  id: "door",
  rooms: ["a", "b"],
  kind: "door",
  from: [4, 1.5],
  to: [4, 2.5],
  sill: 0,
  head: 2,
  thickness: 0.2,
  hinge: "from",
  opensInto: "b",
  angle: Math.PI / 2,
  state: "open",
};
const device: DeviceLike & { readonly id: string } = {
  id: "d",
  at: [2, 2],
  height: 2.7,
  turn: 0,
  masks: [],
  model: {
    id: "m",
    title: "Model",
    mounting: { min: 2, max: 3 },
    declaration: "assumed",
    declaredBy: "test",
    cost: 1,
    zones: { towards: [{ height: 2.7, radius: 8 }], sound: [{ height: 2.7, radius: 3.5 }] },
  },
};
const site: Site = {
  name: "Two rooms",
  defaults: planningDefaults,
  storeys: [{ id: "s", name: "Ground", elevation: 0 }],
  rooms: [room("a", square(0, 0, 4, 4)), room("b", square(4.2, 0, 6, 4))],
  floorPieces: [],
  openings: [door],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [device.model],
  detectors: [
    {
      id: "d",
      tag: "D1",
      room: "a",
      controls: [],
      group: "",
      model: "m",
      pinned: false,
      at: device.at,
      height: 2.7,
      turn: 0,
      masks: [],
    },
  ],
};
const ask = (doors: "open" | "closed") => ({ device: "d", kind: "towards" as const, doors });
const scene = (doors: "open" | "closed", of: Site = site) => sceneOf(of, { storey: "s", doors });

describe("zone of a detector", () => {
  test("a room within reach is seen whole with the door closed", () => {
    expect(areaOf(deviceZone(site, ask("closed")))).toBeCloseTo(16, 9);
  });
  test("through the open door it ends where the lintel hides: 2.0 m high, its far face 2.2 m away, plane 1.0 m", () => {
    const region = deviceZone(site, ask("open"));
    // From the near face of the lintel, 2.0 m away: 2 · (2.7 − 1)/(2.7 − 2) = 4.857 m (derived).
    expect(boundsOf(ringsOf(region)).maxX).toBeCloseTo(2 + 4.857, 3);
  });
  test("planning keeps the margin in hand, the declared zone does not", () => {
    const small = { ...device.model, zones: { towards: [{ height: 2.7, radius: 1 }] } };
    const of = { ...site, models: [small] };
    expect(areaOf(deviceZone(of, ask("closed")))).toBeCloseTo(Math.PI * 0.85 ** 2, 1);
    expect(areaOf(declaredZone(of, ask("closed")))).toBeCloseTo(Math.PI, 1);
  });
  test("outside the mounting limits nothing counts, and the reason says so", () => {
    const high = { ...device, height: 3.2 };
    expect(zoneInScene(scene("closed"), { device: high, kind: "towards" }).region()).toEqual([]);
    expect(unseenReason(scene("closed"), { device: high, kind: "towards", point: [1, 1] })?.kind).toBe(
      "mounting-limits",
    );
  });
  test("a detector in a wall sees nothing", () => {
    expect(
      zoneInScene(scene("open"), { device: { ...device, at: [4.1, 3.5] }, kind: "towards" }).region(),
    ).toEqual([]);
  });
  test("two rooms that share their wall's line are parted by it", () => {
    const thin = {
      ...site,
      rooms: [room("a", square(0, 0, 4, 4)), room("b", square(4, 0, 6, 4))],
      openings: [],
    };
    expect(areaOf(deviceZone(thin, ask("open")))).toBeCloseTo(16, 9);
  });
});

describe("spill", () => {
  test("the low plane of 0.2 m is in sight farther past the lintel than that of a walker", () => {
    const region = spillZone(scene("open"), device);
    expect(boundsOf(ringsOf(region)).maxX).toBeCloseTo(2 + (2 * 2.5) / 0.7, 2);
  });
  test("a heater is seen at its own height, not behind the wall, not above the lens", () => {
    const heater: Interference = { id: "h", room: "b", kind: "heater", at: [6, 2], height: 0.5 };
    expect(seesSource(scene("open"), { device, source: heater })?.distance).toBeCloseTo(4 - 0.05, 6);
    expect(seesSource(scene("closed"), { device, source: heater })).toBeUndefined();
    expect(
      seesSource(scene("open"), { device, source: { ...heater, at: [2, 3], room: "a", height: 2.75 } }),
    ).toBeUndefined();
  });
});

describe("sound", () => {
  test("goes round the jambs of an open door by the shortest way, and ends at a closed one", () => {
    const sound = (doors: "open" | "closed") => zoneInScene(scene(doors), { device, kind: "sound" });
    expect(areaOf(sound("closed").region())).toBeCloseTo(16, 2);
    // Way to the far jamb's corner (4.2, 2.5) is √(2.2² + 0.5²) = 2.256 m; 1.24 m are left round it.
    expect(sound("open").has(4.25, 2.5 + 1.1)).toBe(true);
    expect(sound("open").has(4.25, 2.5 + 1.3)).toBe(false);
  });
});

describe("why a point is not seen", () => {
  const reason = (
    of: Site,
    options: {
      readonly point: Point;
      readonly doors?: "open" | "closed";
      readonly masks?: DeviceLike["masks"];
    },
  ) =>
    unseenReason(scene(options.doors ?? "closed", of), {
      device: { ...device, masks: options.masks ?? [] },
      kind: "towards",
      point: options.point,
    });
  test("a seen point has no reason", () => expect(reason(site, { point: [1, 1] })).toBeUndefined());
  test("behind a rack: the rack by name", () => {
    const rack = {
      id: "r",
      room: "a",
      kind: "rack" as const,
      name: "Rack 3",
      footprint: square(2.5, 1.5, 0.3, 1),
      base: 0,
      top: 2,
      seeThrough: false,
    };
    expect(reason({ ...site, obstacles: [rack] }, { point: [3.2, 2] })).toEqual({
      kind: "hidden",
      behind: { kind: "obstacle", id: "r", name: "Rack 3" },
    });
  });
  test("behind a closed door: the opening; behind a wall: the wall; beyond the lintel: the opening", () => {
    expect(reason(site, { point: [5, 2] })).toMatchObject({ behind: { kind: "opening", id: "door" } });
    expect(reason(site, { point: [5, 3.8] })).toMatchObject({ behind: { kind: "wall" } });
    expect(reason(site, { point: [8, 2], doors: "open" })).toMatchObject({
      behind: { kind: "opening", id: "door" },
    });
  });
  test("masked, beyond reach, too warm", () => {
    expect(reason(site, { point: [3, 2], masks: [{ from: -0.5, to: 0.5, inner: 0, outer: 1.5 }] })).toEqual({
      kind: "masked",
      device: "d",
    });
    expect(reason(site, { point: [9.9, 2], doors: "open" })?.kind).toBe("beyond-reach");
    const warm = { ...site, rooms: site.rooms.map((one) => ({ ...one, highestTemperature: 33 })) };
    expect(reason(warm, { point: [3.5, 3.5] })).toEqual({ kind: "too-warm" });
  });
});

describe("zones looked at from the witness", () => {
  test("a device position is in the witness's zone if and only if the witness is in the device's", () => {
    let compared = 0;
    for (let seed = 0; seed < 12; seed++) {
      const { site: storey, device: hung } = randomStorey(4000 + seed);
      const flat = { ...storey, rooms: storey.rooms.map((one) => ({ ...one, floor: 0 })), floorPieces: [] };
      const here = sceneOf(flat, { storey: "ground", doors: "open" });
      const seen = zoneInScene(here, { device: hung, kind: "towards" });
      const next = dice(seed);
      for (let k = 0; k < 60; k++) {
        const point: Point = [hung.at[0] + 6 * (next() - 0.5), hung.at[1] + 6 * (next() - 0.5)];
        const edge = ringsOf(seen.region());
        if (edge.some((ring) => ring.some((a, i) => near(point, [a, ring[(i + 1) % ring.length] as Point]))))
          continue;
        const home = flat.rooms.find((one) => contains([{ outline: one.outline, holes: one.holes }], point));
        if (
          !home ||
          home.highestTemperature !==
            flat.rooms.find((one) => contains([{ outline: one.outline, holes: one.holes }], hung.at))
              ?.highestTemperature
        )
          continue;
        const back = watchZone(here, { device: { ...hung, at: point }, kind: "towards" });
        expect(back.has(hung.at[0], hung.at[1]), `seed ${seed}`).toBe(seen.has(point[0], point[1]));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(200);
  });
});

/** Within 5 mm of an edge the chords of the two looks may differ. */
function near(p: Point, [a, b]: readonly [Point, Point]): boolean {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy) < 0.005;
}
