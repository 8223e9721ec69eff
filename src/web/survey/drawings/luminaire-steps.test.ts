import { expect, test } from "vitest";
import { planningDefaults, type Site } from "#engine";
import type { JobUnderlay } from "#job";
import { applied } from "../../jobs/apply.ts";
import { luminaireSteps, takenOf } from "./luminaire-steps.ts";

const site: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [
    { id: "ground", name: "", elevation: 0 },
    { id: "upper", name: "", elevation: 3 },
  ],
  rooms: ["ground", "upper"].map((storey) => ({
    id: `room-${storey}`,
    storey,
    number: "",
    name: "",
    use: "other" as const,
    outline: [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ],
    holes: [],
    floor: 0,
    ceilingHeight: 2.5,
    demand: { catch: true, walk: true, hold: true },
    noDevices: [],
  })),
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models: [],
  detectors: [],
};

const place = (x: number) => ({ at: [x, 2] as [number, number], turn: 90, length: 1.2, width: 0.3 });
const underlay: JobUnderlay = {
  id: "plan",
  storey: "upper",
  name: "plan.dxf",
  file: "plan.dxf",
  shown: true,
  layers: [],
  origin: [0, 0],
  turn: 0,
  lines: "",
  blocks: [
    { name: "Lamp", lines: [], places: [place(1), place(3), place(9)] },
    { name: "Chair", lines: [], places: [place(2)] },
  ],
};

test("the luminaires of the said block come into the rooms of the drawing's storey", () => {
  const taking = luminaireSteps(site, underlay, [{ name: "Lamp" }]);
  expect([taking.added, taking.changed, taking.outside]).toEqual([2, 0, 1]);
  const { luminaires } = applied(site, taking.steps);
  expect(luminaires.map(({ room, at }) => [room, at])).toEqual([
    ["room-upper", [1, 2]],
    ["room-upper", [3, 2]],
  ]);
  expect(luminaires[0]!.turn).toBeCloseTo(Math.PI / 2, 9);
});

test("taken again, nothing is doubled, and what a person did with one since stays", () => {
  const once = applied(site, luminaireSteps(site, underlay, [{ name: "Lamp" }]).steps);
  const moved = applied(once, [
    { do: "set", kind: "luminaires", id: once.luminaires[0]!.id, fields: { at: [1.5, 2] } },
  ]);
  expect(luminaireSteps(moved, underlay, [{ name: "lamp" }]).steps).toEqual([]);
  expect(takenOf(moved, underlay, "Lamp")).toBe(2);
  expect(takenOf(moved, underlay, "Chair")).toBe(0);
});

test("type and power that are said later are written on those that are there, and nothing else", () => {
  const once = applied(site, luminaireSteps(site, underlay, [{ name: "Lamp", type: "Linear" }]).steps);
  const later = luminaireSteps(once, underlay, [{ name: "Lamp", type: "Linear", power: 36 }]);
  expect([later.added, later.changed]).toEqual([0, 2]);
  expect(applied(once, later.steps).luminaires).toEqual(
    once.luminaires.map((luminaire) => ({ ...luminaire, power: 36 })),
  );
  expect(luminaireSteps(applied(once, later.steps), underlay, [{ name: "Lamp", power: 36 }]).steps).toEqual(
    [],
  );
});
