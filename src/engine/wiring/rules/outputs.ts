import { figured, inside, joined, say } from "../../check/index.ts";
import { coilCable } from "../coil-cable.ts";
import { contactChecks } from "../contact-checks.ts";
import { behindRcd, standingLeakage } from "../leakage.ts";
import type { WiringModel } from "../model.ts";
import { supplyOfCircuit } from "../supply.ts";
import { switchedGroups } from "../switched-group.ts";
import { leakageShares } from "../tables/protection.ts";
import { mustBe, type RuleHit } from "./rule.ts";

/** Joined outputs beyond which the trade becomes careful where no data sheet says a number. */
const CUSTOMARY_JOINED = 4;
/** Length side by side from which a line leaks noticeably into its switched line. [m] A choice of the trade, to be looked at. */
const LONG_SIDE_BY_SIDE = 50;

/** W-05: each of several joined contacts carries the full common load and its whole inrush. @param model - The wiring. @returns Hits. @source DERIVED-HERE @example Two of 2 A on 3 A: fails */
export function fullLoadEach(model: WiringModel): readonly RuleHit[] {
  const joined = new Set(
    switchedGroups(model).flatMap(({ detectors }) =>
      detectors.length > 1 ? detectors.map(({ id }) => id) : [],
    ),
  );
  return contactChecks(model)
    .filter(({ records, verdict }) => verdict !== "pass" && records.some((id) => joined.has(id)))
    .map(({ name, room, records, what, verdict }) => ({
      name,
      records,
      ...(room === undefined ? {} : { room }),
      verdict: verdict as "fail" | "not-proven",
      detail: inside(what),
    }));
}

/** W-06: no more joined outputs than the data sheet allows; without one nothing is proven, and above the customary four the hit says so. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example Five joined, four declared: fails; nothing declared: not proven */
export const joinedNumber = (model: WiringModel): readonly RuleHit[] =>
  switchedGroups(model).flatMap(({ name, detectors }): readonly RuleHit[] => {
    if (detectors.length < 2 || detectors.some(({ lowVoltage }) => lowVoltage)) return [];
    const where = { name, records: detectors.map(({ id }) => id) };
    const declared = detectors.map(({ contact }) => contact?.joined);
    const least = Math.min(...declared.filter((one) => one !== undefined), Number.POSITIVE_INFINITY);
    if (detectors.length > least)
      return [
        {
          ...where,
          verdict: "fail",
          detail: say`${detectors.length} outputs are joined; ${least} are allowed`,
        },
      ];
    if (!declared.includes(undefined)) return [];
    return [
      {
        ...where,
        verdict: "not-proven",
        detail:
          detectors.length > CUSTOMARY_JOINED
            ? say`how many outputs may be joined (here ${detectors.length}; more than ${CUSTOMARY_JOINED} are not customary)`
            : say`how many outputs may be joined`,
      },
    ];
  });

/** W-09: an inductive load on an output has its suppressor at the coil or across the load. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example Contactor coil without one: fails */
export const suppressedCoils = (model: WiringModel): readonly RuleHit[] => [
  ...model.contactors.flatMap(({ id, name, coil, pack }) =>
    mustBe(pack ? "yes" : coil.suppressor, {
      name,
      records: [id],
      no: say`no suppressor at the coil`,
      unknown: say`whether the coil has a suppressor`,
    }),
  ),
  ...model.loads.flatMap(({ id, name, kind, switchedLine }): readonly RuleHit[] => {
    const line = model.switchedLines.find((one) => one.id === switchedLine);
    return kind === "inductive" && line && !line.suppressors.some(({ across }) => across === "load")
      ? [
          {
            verdict: "fail",
            name,
            records: [id],
            detail: say`an inductive load without a suppressor across it`,
          },
        ]
      : [];
  }),
];

/** W-24: the cable to a coil is calculated like any other: here where its data are on record, otherwise by whoever says so. @param model - The wiring. @returns Hits. @source IEC-60364-4-43 @example Nobody calculated it: not proven, with what is missing */
export const coilCables = (model: WiringModel): readonly RuleHit[] =>
  model.contactors.flatMap((contactor) => {
    const { id, name, coil, pack } = contactor;
    if (pack) return [];
    const own = coilCable(model, contactor);
    // Where it is calculated the checks speak.
    return own.kind === "calculated"
      ? []
      : mustBe(coil.cable, {
          name,
          records: [id],
          no: say`the cable to its coil does not hold`,
          unknown: joined(own.missing, ", "),
        });
  });

/**
 * Current that a capacitor leaks from line into the switched line.
 *
 * I = U · 2π · f · C
 *
 * @param capacitance - Across the contact. [F] @param supply - Voltage [V] and frequency [Hz].
 * @returns Current. [A]
 * @source DERIVED-HERE
 * @example 0.1 µF at 230 V, 50 Hz: 7.23 mA
 */
export const suppressorLeakage = (
  capacitance: number,
  supply: { readonly voltage: number; readonly frequency: number },
): number => supply.voltage * 2 * Math.PI * supply.frequency * capacitance;

/** W-10: what leaks past an open contact makes lamps glow; a suppressor across the load does not. @param model - The wiring. @returns Hits. @source DERIVED-HERE @example 0.1 µF across the contact, no base load: fails */
export const afterglow = (model: WiringModel): readonly RuleHit[] =>
  switchedGroups(model).flatMap(({ id, detectors, loads }): readonly RuleHit[] => {
    const line = model.switchedLines.find((one) => one.id === id);
    if (!line || line.baseLoad === "yes" || !loads.some(({ kind }) => kind === "led")) return [];
    const [circuit = ""] = loads.map((load) => load.circuit);
    const supply = supplyOfCircuit(model, circuit);
    const across = line.suppressors.filter(({ across }) => across === "contact");
    const inside = detectors.filter(({ contact }) => (contact?.openLeakage ?? 0) > 0);
    const milliamperes =
      1000 *
      (across.reduce((sum, { capacitance }) => sum + suppressorLeakage(capacitance, supply), 0) +
        inside.reduce((sum, { contact }) => sum + (contact?.openLeakage ?? 0), 0));
    const why = [
      ...(milliamperes > 0 ? [say`${figured(milliamperes.toFixed(1))} mA leak past the open contact`] : []),
      ...((line.besideLine ?? 0) > LONG_SIDE_BY_SIDE
        ? [say`${line.besideLine ?? 0} m of line and switched line run side by side`]
        : []),
    ];
    const untold = detectors.some(
      ({ contact }) => contact?.kind === "electronic" && contact.openLeakage === undefined,
    );
    return why.length === 0 && untold
      ? [
          {
            verdict: "not-proven",
            name: line.name,
            records: [id],
            detail: say`what the open electronic contact lets through`,
          },
        ]
      : why.map((detail) => ({ verdict: "fail", name: line.name, records: [id], detail }));
  });

/** W-11: more load than the contact bears goes over a contactor; two circuits at one contactor are labelled and isolated on all poles. @param model - The wiring. @returns Hits. @source IEC-60364-4-46 @example Coil and main contacts of two circuits, no label: fails */
export const contactorSupply = (model: WiringModel): readonly RuleHit[] =>
  model.contactors.flatMap(
    ({ id, name, coil, main, pack, labelled, isolatesAllPoles }): readonly RuleHit[] => {
      // A relay pack takes its own supply from the circuit that it switches.
      if (pack) return [];
      const coilFeed = model.detectors.find(({ output }) => output === coil.switchedLine)?.line;
      const where = { name, records: [id] };
      if (!coilFeed || coilFeed.kind === "unknown")
        return [{ ...where, verdict: "not-proven", detail: say`which circuit feeds the coil` }];
      if (coilFeed.kind === "line" && coilFeed.circuit === main.circuit) return [];
      return [
        ...mustBe(labelled, {
          ...where,
          no: say`coil and main contacts have two supplies, and no label says so`,
          unknown: say`whether a label names both supplies`,
        }),
        ...mustBe(isolatesAllPoles, {
          ...where,
          no: say`the two supplies are not isolated on all poles`,
          unknown: say`whether both supplies are isolated on all poles`,
        }),
      ];
    },
  );

/** W-18: a switch beside the contact defeats it, but in plant and electrical rooms one that the detector cannot switch off is required. @param model - The wiring. @returns Hits. @source NEC-110-26-D @example Plant room without one: fails; corridor with one: fails */
export const manualOverride = (model: WiringModel): readonly RuleHit[] =>
  model.rooms.flatMap(({ id, name, use }): readonly RuleHit[] => {
    const lines = new Set(
      model.loads.flatMap((load) => (load.room === id && load.switchedLine ? [load.switchedLine] : [])),
    );
    return model.switchedLines
      .filter((line) => lines.has(line.id))
      .flatMap((line): readonly RuleHit[] => {
        const where = { name, room: id, records: [line.id] };
        if (use === "plant" || use === "electrical")
          return mustBe(line.override, {
            ...where,
            code: "override-missing",
            no: say`somebody at work there can be left in the dark`,
            unknown: say`whether a switch there keeps the light on`,
          });
        return line.override === "yes"
          ? [
              {
                ...where,
                verdict: "fail",
                detail: say`a switch beside the contact keeps the light on for good`,
              },
            ]
          : [];
      });
  });

/** W-19: leakage of joined detectors counts towards their RCD. @param model - The wiring. @returns Hits. @source LEAKAGE-SHARE @example Detectors and luminaires together above 0.3 of 30 mA: fails */
export function detectorLeakage(model: WiringModel): readonly RuleHit[] {
  const rcds = new Map(
    model.devices.flatMap(({ rcd }) => (typeof rcd === "object" ? [[rcd.id, rcd] as const] : [])),
  );
  return [...rcds].flatMap(([rcd, { residual, name = rcd }]): readonly RuleHit[] => {
    const { loads, detectors } = behindRcd(model, rcd);
    const joined = switchedGroups(model).some(
      (group) => group.detectors.filter((one) => detectors.includes(one)).length > 1,
    );
    if (!joined) return [];
    const where = { name, records: detectors.map(({ id }) => id) };
    if (detectors.some(({ leakage }) => leakage === undefined))
      return [{ ...where, verdict: "not-proven", detail: say`what each detector leaks` }];
    const most = leakageShares.rows.standing * residual;
    // Where the luminaires alone leak too much, the leakage of the circuit says so.
    return standingLeakage(loads, []) <= most && standingLeakage(loads, detectors) > most
      ? [
          {
            ...where,
            verdict: "fail",
            detail: say`detectors and luminaires together leak more than 0.3 of its rated residual current`,
          },
        ]
      : [];
  });
}
