import { figured, say } from "../check/index.ts";
import {
  type Circuit,
  largestEarthResistance,
  largestLoopReading,
  type ProtectiveDevice,
  type Supply,
  supplyOfCircuit,
} from "../wiring/index.ts";
import { circuitSubjects, type GroupCase, maker } from "./group-case.ts";
import type { ReadingLimit } from "./reading.ts";
import type { WorkStep } from "./work-step.ts";

/** Continuity, insulation, polarity, in this order, for each circuit. @param given - The group. @param needs - Ids of steps before. @source IEC-60364-6 @example One circuit: three steps */
export function deadTests(given: GroupCase, needs: readonly string[]): readonly WorkStep[] {
  const make = maker(given);
  const { group } = given;
  const subjects = circuitSubjects(given);
  return subjects.flatMap((about) => {
    const common = { stage: "dead-tests", about, state: "dead" } as const;
    const continuity = make({
      ...common,
      name: "continuity",
      needs,
      result: { kind: "reading", reading: "continuity", limit: continuityLimit() },
      source: "IEC-60364-6",
    });
    const insulation = make({
      ...common,
      name: "insulation",
      needs: [continuity.id],
      result: { kind: "reading", reading: "insulation", limit: insulationLimit(group.supply) },
      cautions: ["open-contact-trap", "electronics-disconnected"],
      source: "IEC-60364-6-INSULATION",
    });
    const polarity = make({
      ...common,
      name: "polarity",
      needs: [insulation.id],
      result: { kind: "verdict" },
      source: "IEC-60364-6",
    });
    return [continuity, insulation, polarity];
  });
}

/** No code prints one value: the tester judges, beside what is usual. */
const continuityLimit = (): ReadingLimit | undefined => undefined;

const insulationLimit = (supply: Supply): ReadingLimit | undefined =>
  supply.region === "US"
    ? undefined
    : {
        least: 1,
        source: "IEC-60364-6-INSULATION",
        assumptions: [
          say`500 V direct voltage`,
          say`Test links in, loads disconnected or line and neutral joined`,
        ],
      };

/** Loop or earth electrode, and the RCD, for each circuit; none in the US set. @param given - The group. @param power - Id of the step before. @source IEC-60364-6 @example TN with RCD: loop, time, button */
export function liveTests(given: GroupCase, power: string): readonly WorkStep[] {
  const make = maker(given);
  const { group, model } = given;
  return group.circuits.flatMap((id) => {
    // Circuits that are dead together may come from boards with other supplies.
    const supply = supplyOfCircuit(model, id);
    if (supply.region === "US") return [];
    const circuit = model.circuits.find((one) => one.id === id) as Circuit;
    const device = model.devices.find((one) => one.id === circuit.device);
    const common = {
      stage: "live-tests",
      about: { kind: "circuit", id },
      state: "live",
      needs: [power],
      cautions: ["live-work"],
    } as const;
    const rcd = device?.rcd === undefined || device.rcd === "none" ? undefined : device.rcd;
    const isEarth = supply.system === "TT";
    return [
      isEarth
        ? make({
            ...common,
            name: "earth-resistance",
            result: {
              kind: "reading",
              reading: "earth-resistance",
              limit: rcd && {
                most: largestEarthResistance(rcd.residual),
                source: "IEC-60364-4-41",
                assumptions: [figured("RA · IΔn ≤ 50 V"), say`Above 200 Ω it may not be steady`],
              },
            },
            source: "IEC-60364-4-41",
          })
        : make({
            ...common,
            name: "loop-impedance",
            result: { kind: "reading", reading: "loop-impedance", limit: loopLimit(supply, device) },
            source: "IEC-60364-6",
          }),
      // Where nobody has looked for an RCD the step may be said not to apply.
      ...(device?.rcd === "none"
        ? []
        : [
            make({
              ...common,
              name: "rcd-time",
              mayNotApply: rcd === undefined,
              result: {
                kind: "reading",
                reading: "rcd-time",
                limit: {
                  most: 300,
                  source: "IEC-61008-TIME",
                  assumptions: [say`At the rated residual current, general type`],
                },
              },
              source: "IEC-61008-TIME",
            }),
            make({
              ...common,
              name: "rcd-button",
              mayNotApply: rcd === undefined,
              result: { kind: "verdict" },
            }),
          ]),
    ];
  });
}

/** The measured-value rule of the job: four fifths where the supply is reckoned with 0.95, two thirds otherwise. */
function loopLimit(supply: Supply, device: ProtectiveDevice | undefined): ReadingLimit | undefined {
  if (!device || device.rating === undefined || device.type === "unknown" || device.type === "fuse-gG")
    return undefined;
  const isFourFifths = supply.voltageFactor < 1;
  return {
    most: largestLoopReading(
      {
        voltage: supply.voltage,
        type: device.type,
        rating: device.rating,
        voltageFactor: supply.voltageFactor,
      },
      isFourFifths ? "four-fifths" : "two-thirds",
    ),
    source: isFourFifths ? "BS-7671-LOOP" : "IEC-60364-6-LOOP",
    assumptions: [say`Measured with cold conductors`],
  };
}
