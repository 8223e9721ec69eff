import { type Said, say } from "../check/index.ts";
import { contactChecks } from "./contact-checks.ts";
import type { WiringModel } from "./model.ts";

/** How the load of a switched line is best switched, with the reason. */
export interface SwitchingChoice {
  readonly switchedLine: string;
  readonly choice: "one-contact" | "master-and-slaves" | "contactor";
  readonly reason: Said;
}

/**
 * One contact, a master with slaves, or a contactor.
 *
 * A contactor where any contact fails its duty alone; a master with slaves where several detectors share a load; otherwise the one contact.
 *
 * @param model - The wiring.
 * @returns One choice for each switched line that detectors feed.
 * @source DERIVED-HERE
 * @example Two detectors of 4 A on a row of 2 A: master and slaves
 */
export function switchingChoices(model: WiringModel): readonly SwitchingChoice[] {
  const failed = new Map(
    contactChecks(model)
      .filter(({ verdict }) => verdict === "fail")
      .map((check) => [check.records[0], check.what]),
  );
  return model.switchedLines.flatMap(({ id }): readonly SwitchingChoice[] => {
    const own = model.detectors.filter(({ output }) => output === id);
    if (own.length === 0 || own.some(({ lowVoltage }) => lowVoltage)) return [];
    const [weak] = own.flatMap(({ id: detector, tag }) => {
      const what = failed.get(detector);
      return what === undefined ? [] : [say`${what} is too much for ${tag}`];
    });
    if (weak) return [{ switchedLine: id, choice: "contactor", reason: weak }];
    return own.length > 1
      ? [
          {
            switchedLine: id,
            choice: "master-and-slaves",
            reason: say`Several detectors share the load; one measures light and switches, the others signal`,
          },
        ]
      : [{ switchedLine: id, choice: "one-contact", reason: say`No duty of the contact fails` }];
  });
}

/** A luminaire group to be shared among contacts: its drivers count, its current counts. */
export interface ShareableLoad {
  readonly id: string;
  readonly drivers: number;
  readonly current: number;
}

/**
 * Loads shared among as few contacts as their limits allow, largest first into the first contact with room.
 *
 * @param loads - By id with drivers and current [A]. @param limits - Of one contact.
 * @returns Ids by contact; a load too large for any contact stands alone in `tooLarge`. Never below `least`, the proven smallest number.
 * @source DERIVED-HERE
 * @example Three of 2 A on contacts of 4 A: two contacts
 */
export function shareAmongContacts(
  loads: readonly ShareableLoad[],
  limits: { readonly drivers: number; readonly current: number },
): {
  readonly contacts: readonly (readonly string[])[];
  readonly tooLarge: readonly string[];
  readonly least: number;
} {
  const fits = (load: ShareableLoad): boolean =>
    load.drivers <= limits.drivers && load.current <= limits.current;
  const size = (load: ShareableLoad): number =>
    Math.max(load.drivers / limits.drivers, load.current / limits.current);
  const contacts: { ids: string[]; drivers: number; current: number }[] = [];
  const fitting = loads.filter(fits);
  for (const load of fitting.toSorted((a, b) => size(b) - size(a))) {
    const open = contacts.find(
      (one) => one.drivers + load.drivers <= limits.drivers && one.current + load.current <= limits.current,
    );
    if (open) {
      open.ids.push(load.id);
      open.drivers += load.drivers;
      open.current += load.current;
    } else contacts.push({ ids: [load.id], drivers: load.drivers, current: load.current });
  }
  const sum = (of: (load: ShareableLoad) => number): number =>
    fitting.reduce((all, load) => all + of(load), 0);
  return {
    contacts: contacts.map(({ ids }) => ids),
    tooLarge: loads.filter((load) => !fits(load)).map(({ id }) => id),
    least: Math.ceil(
      Math.max(
        sum(({ drivers }) => drivers) / limits.drivers,
        sum(({ current }) => current) / limits.current,
      ) - 1e-9,
    ),
  };
}
