import { distinct, type Said, say } from "../check/index.ts";
import { ampacityOf, type Capacity, currentCarryingCapacity } from "./capacity.ts";
import { type CircuitCase, designCurrent } from "./circuit-case.ts";
import { atWorst, unsureFactor } from "./circuit-tree.ts";
import type { CableSegment, Circuit } from "./model.ts";
import { insulationFactors, smallestSections } from "./tables/capacity.ts";
import { continuousLoad } from "./tables/united-states.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

const RATING = say`the rating of the protective device`;

/**
 * Coordination of load, protective device and cable: Ib ≤ In ≤ Iz, and the smallest section.
 *
 * I2 ≤ 1.45 · Iz follows from In ≤ Iz for circuit-breakers with I2 = 1.45 · In.
 *
 * @param about - The circuit.
 * @returns Design current against rating, rating against the weakest cable, section against the smallest allowed.
 * @source IEC-60364-4-43, IEC-60364-5-52-CAPACITY, NEC-210-20-A, NEC-240-4-D
 * @example Iz = 11.88 A: a 10 A device passes, 16 A fails
 */
export function capacityChecks(about: CircuitCase): readonly WiringCheck[] {
  return [designCheck(about), cableCheck(about), ...sectionCheck(about)];
}

function designCheck(about: CircuitCase): WiringCheck {
  const { model, tree, device, loads, doubts, missing } = about;
  const american = model.supply.region === "US";
  const continuous = american ? continuousLoad.rows : 1;
  const actual = designCurrent(about) * continuous;
  const worst = designCurrent({ model, tree, loads: atWorst(loads) }) * continuous;
  const unsure = atMost(actual, device.rating) === "pass" && atMost(worst, device.rating) === "fail";
  return {
    verdict: withDoubts(atMost(actual, device.rating), [...doubts, ...(unsure ? [unsureFactor.doubt] : [])]),
    what: say`Design current against the rating of the protective device`,
    actual,
    limit: device.rating,
    unit: "A",
    source: american ? "NEC-210-20-A" : "IEC-60364-4-43",
    assumptions: [
      ...(american ? [say`Continuous load counts 125 %`] : []),
      ...(unsure ? [unsureFactor.doubt] : []),
      ...(device.rating === undefined ? [say`Rating of ${device.name} is unknown`] : []),
      ...doubts,
    ],
    missing: [
      ...missing.loads,
      ...(unsure ? [unsureFactor.missing] : []),
      ...(device.rating === undefined ? [RATING] : []),
    ],
    code: "design-current-over-rating",
    name: tree.circuit.name,
    records: [tree.circuit.id],
  };
}

/** Air around a cable for which the tables hold without a factor; taken where nobody entered another. [°C] @source IEC-60364-5-52-AMBIENT */
const TABLED_AMBIENT = 30;

/** Factor of a cable that runs half a metre or more inside thermal insulation: the smallest there is. @source BS-7671-INSULATION */
const WORST_INSULATION = Math.min(...insulationFactors.rows.map(([, factor]) => factor));

const IN_INSULATION = {
  taken: say`No part of the cable in thermal insulation`,
  missing: say`how much of the cable lies in thermal insulation`,
};

interface CableCapacity {
  readonly capacity: Capacity;
  readonly assumed: readonly Said[];
  /** What was taken for granted though it may lower the capacity, and what to enter instead. */
  readonly untold: readonly { readonly taken: Said; readonly missing: Said }[];
}

/** Capacity of a segment as it lies, with what had to be assumed. @param segment - The cable. @param circuit - Whose it is. @param rating - What it has to bear: where that holds with half a metre in thermal insulation, nobody has to tell. [A] @returns Capacity, assumptions, and what nobody told. @source IEC-60364-5-52-CAPACITY, BS-7671-INSULATION @example Without a method on record: unknown */
export function capacityOf(
  segment: CableSegment,
  { circuit, rating }: { readonly circuit: Circuit; readonly rating: number | undefined },
): CableCapacity {
  const { size, ambient = TABLED_AMBIENT } = segment;
  const loaded = circuit.phases === "three-phase" ? 3 : 2;
  const untold = [
    ...(segment.ambient === undefined
      ? [
          {
            taken: say`${TABLED_AMBIENT} °C around the cable`,
            missing: say`the temperature of the air around the cable`,
          },
        ]
      : []),
    ...(segment.grouping === undefined
      ? [
          {
            taken: say`No other loaded circuit beside the cable`,
            missing: say`how many loaded circuits lie beside it`,
          },
        ]
      : []),
    ...(loaded === 3 && size.kind === "metric" && circuit.thirdHarmonic === undefined
      ? [{ taken: say`Third harmonic at most 15 %`, missing: say`the third harmonic of its current` }]
      : []),
  ];
  if (size.kind === "gauge") {
    const found = ampacityOf({
      gauge: size.gauge,
      terminals: 60,
      conductors: loaded * (segment.grouping?.circuits ?? 1),
      ambient,
    });
    return {
      capacity: found
        ? {
            kind: "capacity",
            value: Math.min(found.ampacity, found.device),
            tabulated: found.ampacity,
            ambient: 1,
            grouping: 1,
            insulation: 1,
            harmonic: 1,
          }
        : { kind: "unknown", why: say`No ampacity of ${size.gauge} AWG is on record` },
      assumed: [say`Terminals rated 60 °C`],
      untold,
    };
  }
  if (segment.method === undefined)
    return {
      capacity: { kind: "unknown", why: say`Nobody knows how the cable lies` },
      assumed: [],
      untold: [],
    };
  const capacity = currentCarryingCapacity({
    section: size.section,
    material: segment.material,
    insulation: segment.insulation,
    loaded,
    method: segment.method,
    ambient,
    grouping: segment.grouping ?? { arrangement: "bunched", circuits: 1 },
    ...(segment.inInsulation === undefined ? {} : { inInsulation: segment.inInsulation }),
    ...(circuit.thirdHarmonic === undefined ? {} : { thirdHarmonic: circuit.thirdHarmonic }),
  });
  if (segment.inInsulation !== undefined) return { capacity, assumed: [], untold };
  const worst = capacity.kind === "capacity" ? capacity.value * WORST_INSULATION : undefined;
  return atMost(rating, worst) === "pass"
    ? {
        capacity,
        assumed: [
          say`No part of the cable in thermal insulation; half a metre, factor ${WORST_INSULATION}, would pass too`,
        ],
        untold,
      }
    : { capacity, assumed: [], untold: [...untold, IN_INSULATION] };
}

function cableCheck({ tree, device, model, gaps, missing }: CircuitCase): WiringCheck {
  const cases = tree.segments.map((segment) => ({
    segment,
    ...capacityOf(segment, { circuit: tree.circuit, rating: device.rating }),
  }));
  const known = cases.flatMap(({ segment, capacity }) =>
    capacity.kind === "capacity" ? [{ segment, value: capacity.value }] : [],
  );
  const weakest = known.reduce<(typeof known)[number] | undefined>(
    (least, next) => (least && least.value <= next.value ? least : next),
    undefined,
  );
  const untold = cases.flatMap((one) => one.untold);
  const unknown = [
    ...distinct(untold.map(({ taken }) => taken)),
    ...distinct(cases.flatMap(({ capacity }) => (capacity.kind === "unknown" ? [capacity.why] : []))),
    ...(tree.segments.length === 0 ? gaps : []),
    ...(["B", "C", "D"].includes(device.type)
      ? []
      : [say`The current at which ${device.name} surely trips is not on record`]),
  ];
  return {
    verdict: withDoubts(atMost(device.rating, weakest?.value), unknown),
    what: say`Rating of the protective device against the weakest cable`,
    actual: device.rating,
    limit: weakest?.value,
    unit: "A",
    source: model.supply.region === "US" ? "NEC-310" : "IEC-60364-5-52-CAPACITY",
    assumptions: [
      ...distinct(cases.flatMap(({ assumed }) => assumed)),
      say`Verify the capacity against your edition`,
      ...unknown,
    ],
    missing: [
      ...(device.rating === undefined ? [RATING] : []),
      ...(["B", "C", "D"].includes(device.type) ? [] : [say`the type of the protective device`]),
      ...(tree.segments.length === 0 ? missing.cables : []),
      ...(cases.some(({ segment }) => segment.size.kind === "metric" && segment.method === undefined)
        ? [say`how the cable lies`]
        : []),
      ...distinct(untold.map((one) => one.missing)),
    ],
    code: "cable-too-thin",
    name: tree.circuit.name,
    records: [tree.circuit.id, ...(weakest ? [weakest.segment.id] : [])],
  };
}

function sectionCheck({ tree }: CircuitCase): readonly WiringCheck[] {
  const sections = tree.segments.flatMap(({ size }) => (size.kind === "metric" ? [size.section] : []));
  if (sections.length === 0) return [];
  const least = Math.min(...sections);
  return [
    {
      verdict: atMost(smallestSections.rows.lighting, least),
      what: say`Smallest section allowed for lighting against the thinnest cable`,
      actual: smallestSections.rows.lighting,
      limit: least,
      unit: "mm²",
      source: "IEC-60364-5-52-SECTION",
      assumptions: [say`Verify: some countries allow 1.0 mm² for lighting`],
      code: "section-below-smallest",
      name: tree.circuit.name,
      records: [tree.circuit.id],
    },
  ];
}
