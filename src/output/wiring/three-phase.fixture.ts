import { type FoundInstallation, type Line, type Site, wiringOfSite } from "#engine";
import { wiredInstallation, wiredSite } from "./wired-wing.fixture.ts";
import { wiringPlan } from "./wiring-plan.ts";

const lines: readonly Line[] = ["L1", "L2", "L3"];

/** The office's luminaires shared among three lines, and behind a contactor in the board that the corridor's detectors hold. */
export const threePhaseSite: Site = {
  ...wiredSite,
  luminaires: wiredSite.luminaires.map((one, i) =>
    one.room === "office" ? { ...one, line: lines[i % 3]!, powerFactor: 0.95 } : one,
  ),
  detectors: wiredSite.detectors.filter(({ id }) => id === "b1" || id === "b2"),
  switches: [],
};

const [board] = wiredInstallation.boards;
const [first, second] = wiredInstallation.circuits;

export const threePhaseInstallation: FoundInstallation = {
  boards: [{ ...board!, dropUsed: 0.005 }],
  circuits: [
    first!,
    {
      ...second!,
      breaker: "C",
      rcd: "yes",
      residualCurrent: 0.03,
      rcdName: "RCD 2",
      phases: "three-phase",
      poles: "three-and-neutral",
      contactors: [
        {
          id: "q1",
          name: "Office lights",
          detectors: ["b1", "b2"],
          luminaires: wiredSite.luminaires.filter(({ room }) => room === "office").map(({ id }) => id),
          rated: 20,
          coilCurrent: 0.02,
          coilPullIn: 0.2,
          coilLeast: 0.85,
          inBoard: "yes",
          suppressor: "yes",
          labelled: "yes",
          isolatesAllPoles: "yes",
        },
      ],
    },
  ],
};

export const threePhasePlan = wiringPlan(
  threePhaseSite,
  threePhaseInstallation,
  wiringOfSite(threePhaseSite, threePhaseInstallation),
);
