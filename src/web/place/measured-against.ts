import type { DetectorModel, PlacementResult } from "#engine";
import { numberText } from "../texts/index.ts";
import { t } from "../texts/place.ts";

/** Room for the rounding of a bound that a solver gives in floating point. */
const boundSlack = 1e-6;

/**
 * What the count of a layout is measured against, in the words that screens and papers share.
 * Where the models cost differently the bound speaks of cost, and only cost is claimed.
 *
 * @param models - The models that the run might choose from.
 */
export function measuredAgainst(
  { best, fewest, bound, boundHolds }: PlacementResult,
  models: readonly Pick<DetectorModel, "cost">[],
): string {
  if (best === undefined) return "";
  const held = t(`place.bound.${boundHolds}`);
  const unit = unitCost(models);
  const countable = unit !== undefined;
  // A bound of nothing is what a run without time knows: nothing is claimed of it.
  if (!fewest && bound <= boundSlack) return t("place.no-bound");
  if (fewest) return countable ? t("place.fewest", { held }) : t("place.cheapest", { held });
  return unit !== undefined
    ? t("place.at-least", { bound: leastCount(bound, unit), found: best.devices.length, held })
    : t("place.at-least-cost", { bound: numberText(bound), found: numberText(best.cost), held });
}

/** The same in two or three words, for a list; empty where nothing was calculated that may be claimed. */
export function measuredShort(
  { best, fewest, bound }: PlacementResult,
  models: readonly Pick<DetectorModel, "cost">[],
): string {
  const unit = unitCost(models);
  if (best === undefined) return "";
  if (fewest) return t(unit === undefined ? "place.state.cheapest" : "place.state.fewest");
  if (unit === undefined || bound <= boundSlack) return t("place.state.not-calculated");
  return t("place.state.at-least", { bound: leastCount(bound, unit) });
}

/** What every model costs, if all cost the same: then a bound on cost is one on the count. */
function unitCost(models: readonly Pick<DetectorModel, "cost">[]): number | undefined {
  const unit = models[0]?.cost ?? 1;
  return unit > 0 && models.every(({ cost }) => cost === unit) ? unit : undefined;
}

const leastCount = (bound: number, unit: number): number => Math.ceil(bound / unit - boundSlack);
