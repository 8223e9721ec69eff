import { expect, test } from "vitest";
import { type Point, planningDefaults, type Room, type Site, siteProblems } from "#engine";
import type { RecordKind } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { added } from "./add.ts";
import { type AddKind, addKinds, gestureOf } from "./kinds.ts";

const room = (use: Room["use"], outline: readonly Point[]): Room => ({
  id: "room",
  storey: "ground",
  number: "",
  name: "",
  use,
  outline,
  holes: [],
  floor: 0,
  ceilingHeight: 2.7,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});

const rectangle: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 8],
  [0, 8],
];
/** The same, turned by 20°, so that nothing lies along the axes. */
const turned = rectangle.map(([x, y]): Point => {
  const [c, s] = [Math.cos(0.35), Math.sin(0.35)];
  return [Math.round((x * c - y * s) * 1000) / 1000, Math.round((x * s + y * c) * 1000) / 1000];
});

const siteOf = (use: Room["use"], outline: readonly Point[]): Site => ({
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [room(use, outline)],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models: [
    {
      id: "m",
      title: "",
      mounting: { min: 2, max: 3 },
      zones: {},
      declaration: "assumed",
      declaredBy: "",
      cost: 1,
    },
  ],
  detectors: [],
});

const kinds = (Object.keys(addKinds) as AddKind[]).filter(
  (kind) => gestureOf(kind) !== "chain" && kind !== "drawnRoom",
);

test.each(
  kinds.flatMap((kind) => [
    { kind, how: "along the axes", outline: rectangle },
    { kind, how: "turned", outline: turned },
  ]),
)("$kind, $how: what is set down makes no plan unsound", ({ kind, outline }) => {
  const use = kind === "cubicles" || kind === "showers" ? "sanitary" : "other";
  const site = siteOf(use, outline);
  const known = new Set(siteProblems(site).map(({ code }) => code));
  const [a, b] = [outline[0] as Point, outline[1] as Point];
  const on = (share: number): Point => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  const middle: Point = [(a[0] + (outline[2] as Point)[0]) / 2, (a[1] + (outline[2] as Point)[1]) / 2];
  const span =
    gestureOf(kind) === "line"
      ? { from: on(0.1), to: on(0.8) }
      : gestureOf(kind) === "box"
        ? { from: [middle[0] - 2, middle[1] - 2] as Point, to: [middle[0] + 2, middle[1] + 2] as Point }
        : ["door", "passage", "window", "glazing"].includes(kind)
          ? { from: on(0.5), to: on(0.5) }
          : { from: middle, to: middle };
  let number = 0;
  const made = added(
    kind,
    {
      site: kind === "room" || kind === "lRoom" ? { ...site, rooms: [] } : site,
      storey: "ground",
      view: { scale: 50, x: 0, y: 0, width: 1000, height: 800 },
      newId: (of: RecordKind) => `${of}-${++number}`,
    },
    span,
  );
  if ("refused" in made) throw new Error(made.refused);
  const problems = siteProblems(applied(site, made.steps)).filter(({ code }) => !known.has(code));
  // A new room without a door says so, and stands on the other one here.
  const expected = kind === "room" || kind === "lRoom" ? ["rooms-overlap"] : [];
  expect(problems.map(({ code }) => code).filter((code) => !expected.includes(code))).toEqual([]);
});

test("the same check finds a place that lies outside of its room", () => {
  const site = siteOf("other", rectangle);
  const outside = { id: "d", room: "room", kind: "desk", at: [50, 50], radius: 0.6 } as const;
  expect(siteProblems({ ...site, dwellPlaces: [outside] }).length).toBeGreaterThan(siteProblems(site).length);
});
