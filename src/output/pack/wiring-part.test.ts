import { expect, test } from "vitest";
import { english, type Handover, type Site, wiringOfSite } from "#engine";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import { threePhaseInstallation, threePhaseSite } from "../wiring/three-phase.fixture.ts";
import { wiringPart } from "./wiring-part.ts";

const handoverOf = (site: Site): Handover =>
  ({
    site,
    settings: { devices: [], rooms: [], findings: [] },
    wiring: {
      kind: "built",
      found: threePhaseInstallation,
      built: wiringOfSite(threePhaseSite, threePhaseInstallation),
      refused: undefined,
    },
  }) as unknown as Handover;

test("What a contactor feeds has its sheet and its terminals, in the whole pack and on the storey where its luminaires hang", () => {
  const whole = handoverOf(threePhaseSite);
  const names = (handover: Handover): readonly string[] =>
    wiringPart({ whole, handover, details: ferryWingTitle, variant: "colour" }).plan!.groups.map(({ name }) =>
      english(name),
    );
  expect(names(whole)).toEqual(["B0.01 + B0.02", "Q1"]);
  const { tables } = wiringPart({ whole, handover: whole, details: ferryWingTitle, variant: "colour" });
  const terminals = tables.find(({ name }) => name === "terminal-schedule.csv")!.content;
  expect(terminals).toMatch(/^Q1,6,L3′,/m);
  const office = threePhaseSite.luminaires.filter(({ room }) => room === "office");
  expect(names(handoverOf({ ...threePhaseSite, detectors: [], luminaires: office }))).toEqual(["Q1"]);
  expect(names(handoverOf({ ...threePhaseSite, luminaires: [] }))).toEqual(["B0.01 + B0.02"]);
});
