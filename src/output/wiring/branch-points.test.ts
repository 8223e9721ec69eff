import { expect, test } from "vitest";
import { deriveWiring, english, wiringOfSite } from "#engine";
import { needsOf } from "../materials/needs.ts";
import { branchPoints } from "./branch-points.ts";
import { boxList } from "./fitting-list.ts";
import { wiredInstallation, wiredSite } from "./wired-wing.fixture.ts";
import { wiringPlan } from "./wiring-plan.ts";

/** A button at the first detector of the corridor: in, on to the luminaires, and the button make three cables there. */
const site = {
  ...wiredSite,
  switches: wiredSite.switches.map((one) =>
    one.id === "s2"
      ? { ...one, kind: "push-button" as const, planned: "button" as const, detectors: ["b1"] }
      : one,
  ),
};
const plan = wiringPlan(site, wiredInstallation, wiringOfSite(site, wiredInstallation));

test("Where more than two cables meet a box is listed, bought and counted in minutes, as the route has it", () => {
  const points = branchPoints(plan);
  expect(points.map(({ id }) => id)).toContain("b1");
  const { route } = deriveWiring(site, wiredInstallation).circuits[0]!;
  const onRoute = points.filter(({ id }) => route!.nodes.some((node) => node.id === id));
  expect(onRoute.map(({ id }) => id).toSorted()).toEqual(route!.boxes.toSorted());
  const rows = boxList(site, plan).rows.filter(([, what]) => english(what ?? "").startsWith("branch box"));
  expect(rows.map(([at, , , , , , cables]) => [at, cables])).toEqual(
    points.map(({ id, cables }) => [plan.names.of(id), String(cables)]),
  );
  const needs = needsOf(site, plan);
  const bought = needs.materials.filter(({ item }) => item === "branch box");
  expect(bought.map(({ quantity }) => quantity)).toEqual([points.length]);
  expect(needs.work.filter(({ kind }) => kind === "branch-box").map(({ number }) => number)).toEqual([
    points.length,
  ]);
});

test("Cables that loop in and out want none, and a board is none", () => {
  const looped = {
    ...plan,
    groups: plan.groups.map((group) => ({ ...group, cables: group.cables.slice(0, 2) })),
  };
  expect(branchPoints(looped)).toEqual([]);
});
