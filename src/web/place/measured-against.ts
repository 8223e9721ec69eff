import type { DetectorModel, PlacementResult } from "#engine";
import { numberText, t } from "../texts/index.ts";

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
  const unit = models[0]?.cost ?? 1;
  const countable = unit > 0 && models.every(({ cost }) => cost === unit);
  // A bound of nothing is what a run without time knows: nothing is claimed of it.
  if (!fewest && bound <= boundSlack) return t("place.no-bound");
  if (fewest) return countable ? t("place.fewest", { held }) : t("place.cheapest", { held });
  return countable
    ? t("place.at-least", { bound: Math.ceil(bound / unit - boundSlack), found: best.devices.length, held })
    : t("place.at-least-cost", { bound: numberText(bound), found: numberText(best.cost), held });
}
