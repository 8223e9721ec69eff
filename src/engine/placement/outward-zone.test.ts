import { expect, test } from "vitest";
import { prepareRoom, sceneOf, watchZone, zoneInScene } from "../coverage/index.ts";
import { dice } from "../coverage/random-storey.fixture.ts";
import { boundsOf, COVER_SKIN, type Point, placeInRegion, regionOf, ringsOf } from "../geometry/index.ts";
import { diceSite } from "./brute-force.fixture.ts";

test("Whoever sees a place within the skin of a witness hangs in the witness's outward zone", () => {
  let pairs = 0;
  let byTheSkin = 0;
  for (let seed = 1; seed <= 24; seed++) {
    const site = diceSite(seed);
    const draw = dice(seed * 7919);
    const exact = prepareRoom(site, "room").closed();
    const eroded = sceneOf(site, { storey: "ground", doors: "closed", eroded: COVER_SKIN });
    const { minX, minY, maxX, maxY } = boundsOf([site.rooms[0]!.outline]);
    const look = (at: Point) => ({
      device: { model: site.models[0]!, at, height: 3, turn: 0, masks: [] },
      kind: "towards" as const,
    });
    for (let i = 0; i < 12; i++) {
      const at: Point = [minX + draw() * (maxX - minX), minY + draw() * (maxY - minY)];
      const zone = zoneInScene(exact, look(at));
      // Places on the edge of the zone: behind a rack, at a wall's end, at the reach. Witnesses lie anywhere within the skin of them.
      for (const seen of ringsOf(zone.region()).flat()) {
        const [turn, away] = [draw() * 2 * Math.PI, Math.sqrt(draw()) * (COVER_SKIN - 1e-5)];
        const witness: Point = [seen[0] + away * Math.cos(turn), seen[1] + away * Math.sin(turn)];
        if (placeInRegion(regionOf(site.rooms[0]!.outline), witness) !== "inside") continue;
        const outward = watchZone(eroded, { ...look(witness), purpose: "outward" });
        pairs++;
        if (!zone.has(...witness)) byTheSkin++;
        expect(outward.has(...at), `seed ${seed}, device at ${at}, witness at ${witness}`).toBe(true);
      }
    }
  }
  expect(pairs).toBeGreaterThan(2000);
  expect(byTheSkin).toBeGreaterThan(1000);
});

test("The outward zone of a witness is no larger than need be: beyond the reach and the skin it holds nobody", () => {
  const site = diceSite(3);
  const eroded = sceneOf(site, { storey: "ground", doors: "closed", eroded: COVER_SKIN });
  const model = site.models[0]!;
  const [x, y] = site.rooms[0]!.outline[0]!;
  const at: Point = [x + 0.5, y + 0.5];
  const zone = watchZone(eroded, {
    device: { model, at, height: 3, turn: 0, masks: [] },
    kind: "towards",
    purpose: "outward",
  });
  const reach = Number(model.id.replace("round-", ""));
  for (let k = 0; k < 40; k++) {
    const turn = (k * Math.PI) / 20;
    const far = reach * 1.01 + COVER_SKIN;
    expect(zone.has(at[0] + far * Math.cos(turn), at[1] + far * Math.sin(turn))).toBe(false);
  }
});
