import type { Verdict } from "../check/index.ts";
import type { Contact, LoadKind } from "../detector/index.ts";
import { atWorst, currentOf, unsureFactor } from "./circuit-tree.ts";
import type { WiringModel } from "./model.ts";
import { supplyOfCircuit } from "./supply.ts";
import {
  driversIn,
  pulses,
  type SwitchedGroup,
  summedInrush,
  switchedGroups,
  uncounted,
} from "./switched-group.ts";
import { assumedPowerFactor } from "./tables/assumed.ts";
import { requiredPeaks } from "./tables/united-states.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/** Years that a contact should last where nobody asked for more. */
export const SERVICE_YEARS = 10;

const POWERS = "the power of each load";
const INRUSH = "number and inrush of the drivers in each luminaire";
const COUNTS = "the number of drivers in each luminaire";

/** A contact with the whole load that it may have to carry alone. */
interface ContactCase {
  readonly model: WiringModel;
  readonly group: SwitchedGroup;
  readonly tag: string;
  readonly id: string;
  readonly room?: string;
  readonly contact: Contact | undefined;
}

/**
 * Duty of every contact: steady load, peak, I²t, drivers, capacitance, protection upstream, cycles.
 *
 * Joined contacts never add up: whichever closes last carries everything, so each is held against the whole load.
 *
 * @param model - The wiring.
 * @returns Checks of every detector's contact and of every contactor's main contacts.
 * @source DERIVED-HERE, IEC-60669-2-1
 * @example Two joined contacts of 4 A on a row of 6 A: both fail
 */
export const contactChecks = (model: WiringModel): readonly WiringCheck[] =>
  switchedGroups(model).flatMap((group) => [
    ...group.detectors.flatMap(({ id, tag, room, contact, cyclesPerYear, lowVoltage }) => {
      // It switches nothing but a signal: the relay of its pack has the duty.
      if (lowVoltage) return [];
      const about: ContactCase = { model, group, tag, id, room, contact };
      return [
        steadyCheck(about),
        ...pulseChecks(about),
        ...backUpCheck(about),
        ...lifeCheck(about, cyclesPerYear),
      ];
    }),
    ...group.contactorsFeeding.flatMap(({ id, name, main }) => [
      mainCurrentCheck({
        model,
        group: onHeaviestLine(model, group, (own) => steadyCurrent(own, model).amperes),
        name,
        id,
        rated: main.rated,
      }),
      ...pulseChecks(
        {
          group: onHeaviestLine(model, group, ({ loads }) => summedInrush(loads).peak),
          tag: name,
          id,
          contact: main,
        },
        "main contacts",
      ),
      ...backUpCheck({ model, group, tag: name, id, contact: main }),
    ]),
  ]);

/** Of loads on three lines those of one, since each main contact carries its own line: the one with the most. */
function onHeaviestLine(
  model: WiringModel,
  group: SwitchedGroup,
  measure: (own: SwitchedGroup) => number,
): SwitchedGroup {
  const lineOf = ({ circuit, line }: SwitchedGroup["loads"][number]) => {
    const own = model.circuits.find(({ id }) => id === circuit);
    return own?.phases === "three-phase" ? (line ?? own.lines[0]) : own?.lines[0];
  };
  const lines = [...new Set(group.loads.map(lineOf))];
  if (lines.length < 2) return group;
  const groups = lines.map((line) => ({
    ...group,
    loads: group.loads.filter((load) => lineOf(load) === line),
  }));
  return groups.reduce((most, own) => (measure(own) > measure(most) ? own : most));
}

function mainCurrentCheck({
  model,
  group,
  name,
  id,
  rated,
}: Pick<ContactCase, "model" | "group" | "id"> & {
  readonly name: string;
  readonly rated: number | undefined;
}): WiringCheck {
  const { amperes, doubts } = steadyCurrent(group, model);
  const unsure = atMost(steadyCurrent(worstOf(group), model).amperes, rated) === "fail";
  const verdict = withDoubts(atMost(amperes, rated), [...doubts, ...(unsure ? [unsureFactor.doubt] : [])]);
  return {
    verdict,
    what: "Steady current on the main contacts",
    actual: amperes,
    limit: rated,
    unit: "A",
    source: "DERIVED-HERE",
    assumptions: [...factorNote(group, { unsure, verdict }), ...doubts],
    missing: [
      ...(doubts.length > 0 ? [POWERS] : []),
      ...(unsure ? [unsureFactor.missing] : []),
      ...(rated === undefined ? ["the rating of its main contacts"] : []),
    ],
    code: "contact-overloaded",
    name,
    records: [id],
  };
}

const worstOf = (group: SwitchedGroup): SwitchedGroup => ({ ...group, loads: atWorst(group.loads) });

/** The power factor that was taken, where one was; that the worst would pass too is said of a pass alone. */
const factorNote = (
  { loads }: SwitchedGroup,
  { unsure, verdict }: { readonly unsure: boolean; readonly verdict: Verdict },
): readonly string[] =>
  loads.every(({ powerFactor }) => powerFactor !== undefined)
    ? []
    : [
        unsure
          ? unsureFactor.doubt
          : `Power factor ${assumedPowerFactor.rows.usual} where none is declared${verdict === "pass" ? `; ${assumedPowerFactor.rows.worst} would pass too` : ""}`,
      ];

const evidence = ({
  tag,
  id,
  room,
}: Pick<ContactCase, "tag" | "id" | "room">): Pick<WiringCheck, "name" | "room" | "records"> => ({
  name: tag,
  ...(room === undefined ? {} : { room }),
  records: [id],
});

function currentsByKind(
  { loads, contactorsFed, detectors }: SwitchedGroup,
  model: WiringModel,
): ReadonlyMap<LoadKind, { readonly amperes: number; readonly watts: number }> {
  const result = new Map<LoadKind, { amperes: number; watts: number }>();
  const add = (kind: LoadKind, amperes: number, watts: number): void => {
    const so = result.get(kind) ?? { amperes: 0, watts: 0 };
    result.set(kind, { amperes: so.amperes + amperes, watts: so.watts + watts });
  };
  for (const load of loads)
    add(
      load.kind,
      currentOf(load, supplyOfCircuit(model, load.circuit).voltage) ?? 0,
      load.count * (load.power ?? 0),
    );
  const feed = detectors.find(({ line }) => line.kind === "line")?.line;
  const coilSupply = feed?.kind === "line" ? supplyOfCircuit(model, feed.circuit) : model.supply;
  for (const { coil } of contactorsFed)
    add("inductive", coil.current ?? 0, (coil.current ?? 0) * coilSupply.voltage);
  return result;
}

function steadyCurrent(
  group: SwitchedGroup,
  model: WiringModel,
): { readonly amperes: number; readonly doubts: readonly string[] } {
  const amperes = [...currentsByKind(group, model).values()].reduce((sum, kind) => sum + kind.amperes, 0);
  return {
    amperes,
    doubts: [
      ...group.loads
        .filter(({ power }) => power === undefined)
        .map(({ name }) => `Power of ${name} is unknown`),
      ...group.contactorsFed
        .filter(({ coil }) => coil.current === undefined)
        .map(({ name }) => `Coil current of ${name} is unknown`),
    ],
  };
}

function steadyCheck(about: ContactCase): WiringCheck {
  const { model, group, contact } = about;
  const kinds = [...currentsByKind(group, model)];
  const { doubts } = steadyCurrent(group, model);
  const { total, unrated } = shareOf(kinds, contact);
  const unsure = shareOf([...currentsByKind(worstOf(group), model)], contact).total > 1;
  const verdict = withDoubts(atMost(total, 1), [
    ...doubts,
    ...unrated,
    ...(unsure ? [unsureFactor.doubt] : []),
  ]);
  const [first] = kinds;
  const one =
    kinds.length === 1 && first && contact?.rated[first[0]] !== undefined && !contact.ratedPower?.[first[0]];
  return {
    verdict,
    what: "Steady load on the contact",
    actual: one ? first[1].amperes : 100 * total,
    limit: one ? contact.rated[first[0]] : 100,
    unit: one ? "A" : "%",
    source: "IEC-60669-2-1",
    assumptions: [...factorNote(group, { unsure, verdict }), ...alone(group), ...doubts, ...unrated],
    missing: [
      ...(doubts.length > 0 ? [POWERS] : []),
      ...(unsure ? [unsureFactor.missing] : []),
      ...(unrated.length > 0 ? ["what its contact is rated for, by kind of load"] : []),
    ],
    code: "contact-overloaded",
    ...evidence(about),
  };
}

/** Why one of several contacts is held against the whole load. */
const alone = ({ detectors }: SwitchedGroup): readonly string[] =>
  detectors.length > 1 ? ["Joined contacts do not add up: this one may carry the whole load alone"] : [];

type KindOfLoad = readonly [LoadKind, { readonly amperes: number; readonly watts: number }];

/** Shares of what a contact bears, summed over the kinds of load. */
function shareOf(
  kinds: readonly KindOfLoad[],
  contact: Contact | undefined,
): { readonly total: number; readonly unrated: readonly string[] } {
  let total = 0;
  const unrated: string[] = [];
  for (const [kind, { amperes, watts }] of kinds) {
    const [rated, ratedPower] = [contact?.rated[kind], contact?.ratedPower?.[kind]];
    if (rated === undefined && ratedPower === undefined)
      unrated.push(`No rating for ${kind} loads on record`);
    total += Math.max(
      rated === undefined ? 0 : amperes / rated,
      ratedPower === undefined ? 0 : watts / ratedPower,
    );
  }
  return { total, unrated };
}

interface PulseCase extends Omit<ContactCase, "model" | "contact"> {
  readonly contact:
    | Pick<Contact, "makingPeak" | "makingWidth" | "makingIntegral" | "drivers" | "capacitance">
    | undefined;
}

function pulseChecks(
  about: PulseCase,
  which: "contact" | "main contacts" = "contact",
): readonly WiringCheck[] {
  const { group, contact } = about;
  const pulsing = group.loads.filter(pulses);
  if (pulsing.length === 0) return [];
  const sum = summedInrush(group.loads);
  const drivers = pulsing.reduce((all, load) => all + driversIn(load), 0);
  const notCounted = uncounted(pulsing);
  const tooWide =
    contact?.makingWidth !== undefined && sum.width > contact.makingWidth
      ? [`The pulse of ${micro(sum.width)} µs is longer than the ${micro(contact.makingWidth)} µs declared`]
      : [];
  const noWidth =
    contact?.makingPeak !== undefined && contact.makingWidth === undefined
      ? ["The width for which the peak is declared is not on record"]
      : [];
  const integral = atMost(sum.integral, contact?.makingIntegral);
  const atOnce = atMost(sum.integralAtOnce, contact?.makingIntegral);
  const capacitance = pulsing.reduce<number | undefined>(
    (all, load) =>
      all === undefined || load.inputCapacitance === undefined
        ? undefined
        : all + driversIn(load) * load.inputCapacitance,
    0,
  );
  const base = { source: "DERIVED-HERE", code: "contact-inrush-too-large", ...evidence(about) } as const;
  return [
    {
      ...base,
      verdict: withDoubts(atMost(sum.peak, contact?.makingPeak), [...sum.missing, ...tooWide, ...noWidth]),
      what: `Inrush peak on the ${which}`,
      actual: sum.peak,
      limit: contact?.makingPeak,
      unit: "A",
      assumptions: [
        "Sum of all peaks, the most that can come",
        ...alone(group),
        ...sum.missing,
        ...tooWide,
        ...noWidth,
        ...(contact?.makingPeak === undefined ? ["The contact's peak is not on record"] : []),
      ],
      missing: [
        ...(sum.missing.length > 0 ? [INRUSH] : []),
        ...(contact?.makingPeak === undefined ? [`the largest peak that its ${which} can make`] : []),
        ...(noWidth.length > 0 || tooWide.length > 0
          ? ["the longest pulse for which that peak is declared"]
          : []),
      ],
    },
    ...(contact?.makingIntegral === undefined
      ? []
      : [
          {
            ...base,
            verdict: withDoubts(
              integral === "pass" && atOnce !== "pass" ? "not-proven" : integral,
              sum.missing,
            ),
            what: `Joule integral of the inrush on the ${which}`,
            actual: sum.integral,
            limit: contact.makingIntegral,
            unit: "A²s",
            assumptions: [
              `${sum.integralAtOnce.toPrecision(3)} A²s if all pulses fall together`,
              ...alone(group),
              ...sum.missing,
            ],
            missing: [INRUSH],
          },
        ]),
    {
      ...base,
      verdict: withDoubts(atMost(drivers, contact?.drivers), notCounted),
      what: `Number of drivers on the ${which}`,
      actual: drivers,
      limit: contact?.drivers,
      unit: "",
      assumptions: [
        ...(contact?.drivers === undefined ? ["The largest number of drivers is not on record"] : []),
        ...alone(group),
        ...notCounted,
      ],
      missing: [
        ...(contact?.drivers === undefined ? [`the largest number of drivers on its ${which}`] : []),
        ...(notCounted.length > 0 ? [COUNTS] : []),
      ],
    },
    ...(contact?.capacitance === undefined
      ? []
      : [
          {
            ...base,
            verdict: withDoubts(atMost(capacitance, contact.capacitance), notCounted),
            what: `Input capacitance of all drivers on the ${which}`,
            actual: capacitance === undefined ? undefined : capacitance * 1e6,
            limit: contact.capacitance * 1e6,
            unit: "µF",
            assumptions: [
              ...alone(group),
              ...(capacitance === undefined ? ["The capacitance of a driver is not on record"] : []),
              ...notCounted,
            ],
            missing: [
              ...(capacitance === undefined ? ["the input capacitance of each driver"] : []),
              ...(notCounted.length > 0 ? [COUNTS] : []),
            ],
          },
        ]),
  ];
}

const micro = (seconds: number): number => Math.round(seconds * 1e6);

function backUpCheck(
  about: Omit<ContactCase, "contact"> & { readonly contact: Pick<Contact, "backUp"> | undefined },
): readonly WiringCheck[] {
  const { model, group, contact } = about;
  const ratings = model.circuits
    .filter(({ id }) => group.loads.some(({ circuit }) => circuit === id))
    .map(({ device }) => model.devices.find(({ id }) => id === device)?.rating);
  if (ratings.length === 0) return [];
  const actual = ratings.includes(undefined) ? undefined : Math.max(...(ratings as number[]));
  return [
    {
      verdict: atMost(actual, contact?.backUp),
      what: "Protective device upstream against what the contact needs",
      actual,
      limit: contact?.backUp,
      unit: "A",
      source: "IEC-60364-4-43",
      assumptions:
        contact?.backUp === undefined ? ["The largest device before the contact is not on record"] : [],
      missing: [
        ...(contact?.backUp === undefined ? ["the largest protective device before its contact"] : []),
        ...(actual === undefined ? ["the rating of the protective device"] : []),
      ],
      code: "contact-not-protected",
      ...evidence(about),
    },
  ];
}

function lifeCheck(about: ContactCase, cycles: number | undefined): readonly WiringCheck[] {
  const life = about.contact?.life;
  if (cycles === undefined || life === undefined) return [];
  return [
    {
      verdict: atMost(cycles * SERVICE_YEARS, life),
      what: `Switching cycles in ${SERVICE_YEARS} years`,
      actual: cycles * SERVICE_YEARS,
      limit: life,
      unit: "",
      source: "COMMON-PRACTICE",
      assumptions: [`${SERVICE_YEARS} years of service`],
      code: "contact-worn-out",
      ...evidence(about),
    },
  ];
}

/** Peak and I²t that a control device for electronic loads must make, next larger row of the table. @param voltage - 120 or 277. [V] @param steady [A] @returns The row; undefined beyond the table @source NEMA-410 @example 120 V, 4 A: the row of 5 A, 192 A */
export const requiredPeak = (
  voltage: 120 | 277,
  steady: number,
): { readonly steady: number; readonly peak: number; readonly integral?: number } | undefined =>
  requiredPeaks.rows[voltage].find((row) => steady <= row.steady);
