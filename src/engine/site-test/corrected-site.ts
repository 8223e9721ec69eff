import { type DetectorModel, warmthFactor, type ZoneKind, type ZoneRow } from "../detector/index.ts";
import type { Celsius } from "../quantity/index.ts";
import type { Detector, Site } from "../site/index.ts";
import type { FoundKind, FoundReach } from "./found-reach.ts";

const KINDS: readonly FoundKind[] = ["seated", "towards", "across"];

/** What the correction of a site takes. */
export interface Found {
  readonly reach: readonly FoundReach[];
  /** Air temperature on the day of the test; 22 °C, at which reach is declared, if nobody noted it. */
  readonly ambient?: Celsius;
}

/**
 * A site whose detectors reach as far as was found.
 *
 * Each device has a model of its own. Rows are scaled by the found factor, those without by 1 − margin, and the margins are then 0: so coverage counts on what was
 * found as it stands, and elsewhere on what was planned. A factor found on a warm day is brought to 22 °C, since warmth takes its share again.
 *
 * @param site - The planned site. @param found - Reach as found.
 * @returns The corrected site. A factor above the planned one counts only if it is proved by enough readings, and then by the lower end of its interval (CS-2); one below
 * it counts at once, as the likeliest value; where it was never seen at all, as the nearest place at which it was not.
 * @source REACH-PROBIT
 * @example Nothing found: the same coverage as planned, by models that declare 15 % less with no margin
 */
export function withFoundReach(site: Site, found: Found): Site {
  const { margin } = site.defaults;
  const warmth = Math.max(1e-6, warmthFactor(found.ambient ?? 22));
  const models: DetectorModel[] = [...site.models];
  const detectors = site.detectors.map((detector): Detector => {
    const model = site.models.find(({ id }) => id === detector.model);
    if (!model) return detector;
    const own = found.reach.filter(({ device }) => device === detector.id);
    const factors = Object.fromEntries(
      KINDS.map((kind) => [
        kind,
        countedFactor(
          own.find((one) => one.kind === kind),
          { planned: 1 - margin[kind], warmth },
        ),
      ]),
    ) as Readonly<Record<FoundKind, number>>;
    const id = `${model.id} at ${detector.id}`;
    models.push(scaledModel(model, { id, factors }));
    return { ...detector, model: id };
  });
  return {
    ...site,
    defaults: { ...site.defaults, margin: { ...margin, seated: 0, towards: 0, across: 0 } },
    models,
    detectors,
  };
}

/**
 * The factor on the declared reach that coverage may count on.
 *
 * @param found - What was found; undefined: nothing. @param question.planned - Factor of the plan, 1 − margin. @param question.warmth - Share of reach left on the day of the test.
 * @returns Factor at 22 °C.
 * @source REACH-PROBIT
 * @example Planned 0.85; found 0.7: 0.7; found 0.95 in 0.88 … 1.02 by enough readings: 0.88
 */
export function countedFactor(
  found: FoundReach | undefined,
  question: { readonly planned: number; readonly warmth: number },
): number {
  const { planned, warmth } = question;
  if (!found) return planned;
  // Bounded on one side only: never seen, it reaches at most to where it was not; always seen, nothing speaks against the plan.
  const likely = found.factor ?? (found.seenTo === undefined ? found.unseenFrom : undefined);
  const counted = likely === undefined ? planned : Math.min(1, likely / warmth);
  if (counted < planned) return counted;
  return found.enough ? Math.max(planned, Math.min(1, found.interval[0] / warmth)) : planned;
}

function scaledModel(
  model: DetectorModel,
  { id, factors }: { readonly id: string; readonly factors: Readonly<Record<FoundKind, number>> },
): DetectorModel {
  const scaled = (kind: FoundKind, of: ZoneKind = kind): readonly ZoneRow[] | undefined =>
    model.zones[of]?.map((row) =>
      "radius" in row
        ? { ...row, radius: row.radius * factors[kind] }
        : { ...row, outline: row.outline.map(([angle, radius]) => [angle, radius * factors[kind]] as const) },
    );
  const zones = {
    seated: scaled("seated"),
    towards: scaled("towards"),
    // Without a row of its own, across is as towards; what was found of it may differ.
    across: scaled("across") ?? scaled("across", "towards"),
    sound: model.zones.sound,
  };
  return {
    ...model,
    id,
    declaration: "measured-on-site",
    zones: Object.fromEntries(Object.entries(zones).filter(([, rows]) => rows !== undefined)),
  };
}
