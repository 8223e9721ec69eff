import { type Said, say } from "../../check/index.ts";
import { currentOf } from "../circuit-tree.ts";
import { contactChecks } from "../contact-checks.ts";
import { type ShareableLoad, shareAmongContacts, switchingChoices } from "../groups.ts";
import type { Load, WiredDetector, WiringModel } from "../model.ts";
import { supplyOfCircuit } from "../supply.ts";
import { driversIn, type SwitchedGroup, switchedGroups } from "../switched-group.ts";

/** How the luminaires of one switched line are best switched. */
export interface GroupChoice {
  readonly switchedLine: string;
  readonly detectors: readonly string[];
  readonly luminaires: readonly string[];
  /** split: each detector switches its own share, none more than its contact bears. */
  readonly choice: "one-contact" | "master-and-slaves" | "split" | "contactor";
  readonly reason: Said;
  /** For a split: luminaires by detector. */
  readonly shares: readonly { readonly detector: string; readonly luminaires: readonly string[] }[];
}

/**
 * One contact, a master with slaves, a share for each detector, or a contactor, for every switched line.
 *
 * Where a contact fails alone and there are at least as many detectors as contacts are needed, the luminaires are shared among them in the
 * order in which they stand on record; a share is offered only if no duty of any contact fails with it. Otherwise a contactor.
 *
 * @param model - The wiring.
 * @returns One choice for each switched line that detectors feed.
 * @source DERIVED-HERE
 * @example Eight drivers of 26 A on two contacts of 165 A: four on each
 */
export const groupChoices = (model: WiringModel): readonly GroupChoice[] => {
  const choices = new Map(switchingChoices(model).map((choice) => [choice.switchedLine, choice]));
  return switchedGroups(model).flatMap((group): readonly GroupChoice[] => {
    const own = choices.get(group.id);
    if (!own) return [];
    const base = {
      switchedLine: group.id,
      detectors: group.detectors.map(({ id }) => id),
      luminaires: group.loads.map(({ id }) => id),
    };
    const shares = own.choice === "contactor" ? sharesOf(model, group) : undefined;
    return [
      shares
        ? { ...base, choice: "split", reason: say`${own.reason}; each detector bears its own share`, shares }
        : { ...base, choice: own.choice, reason: own.reason, shares: [] },
    ];
  });
};

/** Luminaires by detector so that no contact fails; undefined where there are too few contacts. */
function sharesOf(model: WiringModel, group: SwitchedGroup): GroupChoice["shares"] | undefined {
  const { detectors, loads } = group;
  if (detectors.length < 2 || loads.some(({ power, inrush }) => power === undefined || !inrush))
    return undefined;
  const worst = Math.max(...loads.map(({ inrush }) => inrush?.peak ?? 0));
  const least = (of: (detector: WiredDetector) => number | undefined): number | undefined =>
    detectors.map(of).reduce((a, b) => (a === undefined || b === undefined ? undefined : Math.min(a, b)));
  const [rated, peak, most] = [
    least(({ contact }) => contact?.rated.led),
    least(({ contact }) => contact?.makingPeak),
    least(({ contact }) => contact?.drivers),
  ];
  if (rated === undefined || peak === undefined || most === undefined) return undefined;
  const drivers = Math.min(most, Math.floor(peak / worst + 1e-9));
  const shareable = loads.map(
    (load): ShareableLoad => ({
      id: load.id,
      drivers: driversIn(load),
      current: currentOf(load, supplyOfCircuit(model, load.circuit).voltage) ?? 0,
    }),
  );
  const needed = shareAmongContacts(shareable, { drivers, current: rated });
  if (needed.tooLarge.length > 0 || needed.contacts.length > detectors.length) return undefined;
  const size = Math.ceil(loads.length / detectors.length);
  const shares = detectors.map(({ id }, i) => ({
    detector: id,
    luminaires: loads.slice(i * size, (i + 1) * size).map((load) => load.id),
  }));
  return shares.every(({ luminaires }) => luminaires.length > 0) && bears(model, group, shares)
    ? shares
    : undefined;
}

/** Whether no contact fails when each detector has a line of its own. */
function bears(model: WiringModel, { id, detectors }: SwitchedGroup, shares: GroupChoice["shares"]): boolean {
  const lineOf = (detector: string): string => `${id} of ${detector}`;
  const own = new Map(
    shares.flatMap(({ detector, luminaires }) => luminaires.map((one) => [one, lineOf(detector)] as const)),
  );
  const split: WiringModel = {
    ...model,
    switchedLines: [
      ...model.switchedLines,
      ...shares.map(({ detector }) => ({ id: lineOf(detector), name: detector, suppressors: [] })),
    ],
    loads: model.loads.map((load): Load => {
      const switchedLine = own.get(load.id);
      return switchedLine === undefined ? load : { ...load, switchedLine };
    }),
    detectors: model.detectors.map((one) => (one.output === id ? { ...one, output: lineOf(one.id) } : one)),
  };
  const names = new Set(detectors.map((one) => one.id));
  return contactChecks(split).every(
    ({ records, verdict }) => verdict !== "fail" || !records.some((record) => names.has(record)),
  );
}
