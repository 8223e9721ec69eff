import { say } from "../check/index.ts";
import type { Contact } from "../detector/index.ts";
import { type ContactCase, evidence } from "./contact-case.ts";
import { pulseChecks } from "./contact-inrush.ts";
import { mainCurrentCheck, steadyCheck, steadyCurrent } from "./contact-load.ts";
import type { WiringModel } from "./model.ts";
import { type SwitchedGroup, summedInrush, switchedGroups } from "./switched-group.ts";
import { atMost, type WiringCheck } from "./wiring-check.ts";

/** Years that a contact should last where nobody asked for more. */
export const SERVICE_YEARS = 10;

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
        "main-contacts",
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
      what: say`Protective device upstream against what the contact needs`,
      actual,
      limit: contact?.backUp,
      unit: "A",
      source: "IEC-60364-4-43",
      assumptions:
        contact?.backUp === undefined ? [say`The largest device before the contact is not on record`] : [],
      missing: [
        ...(contact?.backUp === undefined ? [say`the largest protective device before its contact`] : []),
        ...(actual === undefined ? [say`the rating of the protective device`] : []),
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
      what: say`Switching cycles in ${SERVICE_YEARS} years`,
      actual: cycles * SERVICE_YEARS,
      limit: life,
      unit: "",
      source: "COMMON-PRACTICE",
      assumptions: [say`${SERVICE_YEARS} years of service`],
      code: "contact-worn-out",
      ...evidence(about),
    },
  ];
}
