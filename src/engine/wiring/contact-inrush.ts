import { figured, say } from "../check/index.ts";
import type { Contact } from "../detector/index.ts";
import { alone, type ContactCase, evidence } from "./contact-case.ts";
import { driversIn, pulses, summedInrush, uncounted } from "./switched-group.ts";
import { requiredPeaks } from "./tables/united-states.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

const INRUSH = say`number and inrush of the drivers in each luminaire`;
const COUNTS = say`the number of drivers in each luminaire`;

interface PulseCase extends Omit<ContactCase, "model" | "contact"> {
  readonly contact:
    | Pick<Contact, "makingPeak" | "makingWidth" | "makingIntegral" | "drivers" | "capacitance">
    | undefined;
}

const pulseWords = {
  contact: {
    peak: say`Inrush peak on the contact`,
    integral: say`Joule integral of the inrush on the contact`,
    drivers: say`Number of drivers on the contact`,
    capacitance: say`Input capacitance of all drivers on the contact`,
    peakMissing: say`the largest peak that its contact can make`,
    driversMissing: say`the largest number of drivers on its contact`,
  },
  "main-contacts": {
    peak: say`Inrush peak on the main contacts`,
    integral: say`Joule integral of the inrush on the main contacts`,
    drivers: say`Number of drivers on the main contacts`,
    capacitance: say`Input capacitance of all drivers on the main contacts`,
    peakMissing: say`the largest peak that its main contacts can make`,
    driversMissing: say`the largest number of drivers on its main contacts`,
  },
} as const;

/** What a contact makes when its load draws its pulse: peak, I²t, number of drivers, capacitance. @param about - The contact with its load. @param which - A detector's contact, or the main contacts of a contactor. @returns Checks; none for a load without pulse. @source DERIVED-HERE @example Ten drivers of 30 A on a contact of 165 A: fails */
export function pulseChecks(
  about: PulseCase,
  which: keyof typeof pulseWords = "contact",
): readonly WiringCheck[] {
  const told = pulseWords[which];
  const { group, contact } = about;
  const pulsing = group.loads.filter(pulses);
  if (pulsing.length === 0) return [];
  const sum = summedInrush(group.loads);
  const drivers = pulsing.reduce((all, load) => all + driversIn(load), 0);
  const notCounted = uncounted(pulsing);
  const tooWide =
    contact?.makingWidth !== undefined && sum.width > contact.makingWidth
      ? [
          say`The pulse of ${micro(sum.width)} µs is longer than the ${micro(contact.makingWidth)} µs declared`,
        ]
      : [];
  const noWidth =
    contact?.makingPeak !== undefined && contact.makingWidth === undefined
      ? [say`The width for which the peak is declared is not on record`]
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
      what: told.peak,
      actual: sum.peak,
      limit: contact?.makingPeak,
      unit: "A",
      assumptions: [
        say`Sum of all peaks, the most that can come`,
        ...alone(group),
        ...sum.missing,
        ...tooWide,
        ...noWidth,
        ...(contact?.makingPeak === undefined ? [say`The contact's peak is not on record`] : []),
      ],
      missing: [
        ...(sum.missing.length > 0 ? [INRUSH] : []),
        ...(contact?.makingPeak === undefined ? [told.peakMissing] : []),
        ...(noWidth.length > 0 || tooWide.length > 0
          ? [say`the longest pulse for which that peak is declared`]
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
            what: told.integral,
            actual: sum.integral,
            limit: contact.makingIntegral,
            unit: "A²s",
            assumptions: [
              say`${figured(sum.integralAtOnce.toPrecision(3))} A²s if all pulses fall together`,
              ...alone(group),
              ...sum.missing,
            ],
            missing: [INRUSH],
          },
        ]),
    {
      ...base,
      verdict: withDoubts(atMost(drivers, contact?.drivers), notCounted),
      what: told.drivers,
      actual: drivers,
      limit: contact?.drivers,
      unit: "",
      assumptions: [
        ...(contact?.drivers === undefined ? [say`The largest number of drivers is not on record`] : []),
        ...alone(group),
        ...notCounted,
      ],
      missing: [
        ...(contact?.drivers === undefined ? [told.driversMissing] : []),
        ...(notCounted.length > 0 ? [COUNTS] : []),
      ],
    },
    ...(contact?.capacitance === undefined
      ? []
      : [
          {
            ...base,
            verdict: withDoubts(atMost(capacitance, contact.capacitance), notCounted),
            what: told.capacitance,
            actual: capacitance === undefined ? undefined : capacitance * 1e6,
            limit: contact.capacitance * 1e6,
            unit: "µF",
            assumptions: [
              ...alone(group),
              ...(capacitance === undefined ? [say`The capacitance of a driver is not on record`] : []),
              ...notCounted,
            ],
            missing: [
              ...(capacitance === undefined ? [say`the input capacitance of each driver`] : []),
              ...(notCounted.length > 0 ? [COUNTS] : []),
            ],
          },
        ]),
  ];
}

const micro = (seconds: number): number => Math.round(seconds * 1e6);

/** Peak and I²t that a control device for electronic loads must make, next larger row of the table. @param voltage - 120 or 277. [V] @param steady [A] @returns The row; undefined beyond the table @source NEMA-410 @example 120 V, 4 A: the row of 5 A, 192 A */
export const requiredPeak = (
  voltage: 120 | 277,
  steady: number,
): { readonly steady: number; readonly peak: number; readonly integral?: number } | undefined =>
  requiredPeaks.rows[voltage].find((row) => steady <= row.steady);
