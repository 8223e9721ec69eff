import { type Said, say, type Verdict } from "../check/index.ts";
import type { Contact, LoadKind } from "../detector/index.ts";
import { atWorst, currentOf, unsureFactor } from "./circuit-tree.ts";
import { alone, type ContactCase, evidence } from "./contact-case.ts";
import type { WiringModel } from "./model.ts";
import { supplyOfCircuit } from "./supply.ts";
import type { SwitchedGroup } from "./switched-group.ts";
import { assumedPowerFactor } from "./tables/assumed.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

const POWERS = say`the power of each load`;

/** Steady current of the load against the rating of a contactor's main contacts. @param model - The wiring. @param group - The load. @param name - Of the contactor. @param id - Its record. @param rated - Of its main contacts. [A] @returns One check. @source DERIVED-HERE @example 12 A on contacts of 10 A: fails */
export function mainCurrentCheck({
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
    what: say`Steady current on the main contacts`,
    actual: amperes,
    limit: rated,
    unit: "A",
    source: "DERIVED-HERE",
    assumptions: [...factorNote(group, { unsure, verdict }), ...doubts],
    missing: [
      ...(doubts.length > 0 ? [POWERS] : []),
      ...(unsure ? [unsureFactor.missing] : []),
      ...(rated === undefined ? [say`the rating of its main contacts`] : []),
    ],
    code: "contact-overloaded",
    name,
    records: [id],
  };
}

const { usual, worst } = assumedPowerFactor.rows;

const worstOf = (group: SwitchedGroup): SwitchedGroup => ({ ...group, loads: atWorst(group.loads) });

/** The power factor that was taken, where one was; that the worst would pass too is said of a pass alone. */
const factorNote = (
  { loads }: SwitchedGroup,
  { unsure, verdict }: { readonly unsure: boolean; readonly verdict: Verdict },
): readonly Said[] =>
  loads.every(({ powerFactor }) => powerFactor !== undefined)
    ? []
    : [
        unsure
          ? unsureFactor.doubt
          : verdict === "pass"
            ? say`Power factor ${usual} where none is declared; ${worst} would pass too`
            : say`Power factor ${usual} where none is declared`,
      ];

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

/** Current of a whole group, with what nobody knows of it. @param group - Loads and coils. @param model - The wiring. @returns Amperes and doubts. [A] @source DERIVED-HERE @example Two loads of 1 A: 2 A */
export function steadyCurrent(
  group: SwitchedGroup,
  model: WiringModel,
): { readonly amperes: number; readonly doubts: readonly Said[] } {
  const amperes = [...currentsByKind(group, model).values()].reduce((sum, kind) => sum + kind.amperes, 0);
  return {
    amperes,
    doubts: [
      ...group.loads
        .filter(({ power }) => power === undefined)
        .map(({ name }) => say`Power of ${name} is unknown`),
      ...group.contactorsFed
        .filter(({ coil }) => coil.current === undefined)
        .map(({ name }) => say`Coil current of ${name} is unknown`),
    ],
  };
}

/** Steady load on a contact: against the rating of its kind, or of several kinds the sum of their shares. @param about - The contact with its load. @returns One check. @source IEC-60669-2-1 @example 2 A of LED on 4 A for LED: passes */
export function steadyCheck(about: ContactCase): WiringCheck {
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
    what: say`Steady load on the contact`,
    actual: one ? first[1].amperes : 100 * total,
    limit: one ? contact.rated[first[0]] : 100,
    unit: one ? "A" : "%",
    source: "IEC-60669-2-1",
    assumptions: [...factorNote(group, { unsure, verdict }), ...alone(group), ...doubts, ...unrated],
    missing: [
      ...(doubts.length > 0 ? [POWERS] : []),
      ...(unsure ? [unsureFactor.missing] : []),
      ...(unrated.length > 0 ? [say`what its contact is rated for, by kind of load`] : []),
    ],
    code: "contact-overloaded",
    ...evidence(about),
  };
}

type KindOfLoad = readonly [LoadKind, { readonly amperes: number; readonly watts: number }];

/** Shares of what a contact bears, summed over the kinds of load. */
function shareOf(
  kinds: readonly KindOfLoad[],
  contact: Contact | undefined,
): { readonly total: number; readonly unrated: readonly Said[] } {
  let total = 0;
  const unrated: Said[] = [];
  for (const [kind, { amperes, watts }] of kinds) {
    const [rated, ratedPower] = [contact?.rated[kind], contact?.ratedPower?.[kind]];
    if (rated === undefined && ratedPower === undefined) unrated.push(noRating[kind]);
    total += Math.max(
      rated === undefined ? 0 : amperes / rated,
      ratedPower === undefined ? 0 : watts / ratedPower,
    );
  }
  return { total, unrated };
}

const noRating: Readonly<Record<LoadKind, Said>> = {
  led: say`No rating for led loads on record`,
  fluorescent: say`No rating for fluorescent loads on record`,
  incandescent: say`No rating for incandescent loads on record`,
  inductive: say`No rating for inductive loads on record`,
  resistive: say`No rating for resistive loads on record`,
};
