import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { realFiles } from "../../../test/real-files.ts";
import { contains, distanceToRings, type Outline, type Point, poleOf, ringsOf } from "../geometry/index.ts";
import { planningDefaults, type Site } from "../site/index.ts";
import { dice } from "./random-storey.fixture.ts";
import { sceneOf } from "./scene.ts";
import { sees } from "./sees.ts";
import { zoneInScene } from "./zone.ts";

const folder = realFiles("polygon");

/** Rings of real floor maps (metres) and of art-gallery polygons (corners as fractions). */
function outlines(from: string): readonly (readonly [string, Outline])[] {
  const maps = readdirSync(`${from}/houseexpo`).map((name): readonly [string, Outline] => {
    const { verts } = JSON.parse(readFileSync(`${from}/houseexpo/${name}`, "utf8")) as {
      verts: [number, number][];
    };
    return [name, verts];
  });
  const galleries = readdirSync(`${from}/agp`).map((name): readonly [string, Outline] => {
    const numbers = readFileSync(`${from}/agp/${name}`, "utf8")
      .trim()
      .split(/\s+/)
      .slice(1)
      .map((word) => {
        const [p, q] = word.split("/").map(Number) as [number, number | undefined];
        return p / (q ?? 1);
      });
    return [
      name,
      Array.from(
        { length: numbers.length / 2 },
        (_, i): Point => [numbers[2 * i] as number, numbers[2 * i + 1] as number],
      ),
    ];
  });
  return [...maps, ...galleries];
}

describe.skipIf(folder === undefined)(
  "real outlines as rooms (skipped where the real files are not at hand)",
  () => {
    test.each(folder === undefined ? [] : outlines(folder))(
      "%s: the zone agrees with the rays",
      (_, drawn) => {
        const ring = drawn.filter(
          (p, i) =>
            p[0] !== drawn[(i + 1) % drawn.length]?.[0] || p[1] !== drawn[(i + 1) % drawn.length]?.[1],
        );
        const { at, distance } = poleOf({ outline: ring, holes: [] });
        expect(distance).toBeGreaterThan(0);
        const zones = { towards: [{ height: 2.5, radius: 8 * distance }] };
        const model = {
          id: "m",
          title: "",
          mounting: { min: 2, max: 3 },
          zones,
          declaration: "assumed",
          declaredBy: "",
          cost: 1,
        } as const;
        const room = {
          id: "r",
          storey: "s",
          number: "",
          name: "",
          use: "other",
          outline: ring,
          holes: [],
          floor: 0,
          ceilingHeight: 2.6,
          demand: { catch: true, walk: true, hold: true },
          noDevices: [],
        } as const;
        const site: Site = {
          name: "",
          defaults: planningDefaults,
          storeys: [{ id: "s", name: "", elevation: 0 }],
          rooms: [room],
          floorPieces: [],
          openings: [],
          obstacles: [],
          dwellPlaces: [],
          interference: [],
          switches: [],
          ceilingThings: [],
          luminaires: [],
          models: [model],
          detectors: [],
        };
        const device = { model, at, height: 2.5, turn: 0, masks: [] };
        const region = zoneInScene(sceneOf(site, { storey: "s", doors: "closed" }), {
          device,
          kind: "towards",
        }).region();
        const ray = sees(site, { device, storey: "s", kind: "towards", doors: "closed" });
        const next = dice(1);
        for (let k = 0; k < 200; k++) {
          const p: Point = [at[0] + 14 * distance * (next() - 0.5), at[1] + 14 * distance * (next() - 0.5)];
          if (contains(region, p) !== ray(p)) expect(distanceToRings(p, ringsOf(region))).toBeLessThan(0.002);
        }
      },
    );
  },
);
