import { Label, Radio, RadioGroup } from "react-aria-components";
import type { Layout } from "#engine";
import { useUnits } from "../settings/preferences.ts";
import { areaText, lengthText, percentText, type Units } from "../texts/index.ts";
import { t } from "../texts/place.ts";

type Trait = keyof Layout["traits"];

const traits: readonly Trait[] = ["worstDarkWalk", "spillArea", "leastMargin", "alignment"];

/** Whether less or more of a trait is better. */
const better: Readonly<Record<Trait, 1 | -1>> = {
  worstDarkWalk: 1,
  spillArea: 1,
  leastMargin: -1,
  alignment: -1,
};

interface LayoutChoiceProps {
  readonly layouts: readonly Layout[];
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

/** Layouts side by side with what each is better at; the chosen one is shown on the plan. */
export function LayoutChoice({ layouts, chosen, onChoose }: LayoutChoiceProps) {
  const units = useUnits();
  return (
    <RadioGroup className="layouts" value={String(chosen)} onChange={(index) => onChoose(Number(index))}>
      <Label className="field-label">{t("place.layouts")}</Label>
      <div className="layouts-row">
        {layouts.map((layout, index) => (
          <Radio key={String(index)} value={String(index)} className="layout">
            <span className="layout-name">{t("place.layout", { letter: "ABCDEFGH".charAt(index) })}</span>
            <span>{t("count.detectors", { count: layout.devices.length })}</span>
            <dl className="layout-traits">
              {traits.map((trait) => (
                <div
                  key={trait}
                  className={isBest(layouts, index, trait) ? "layout-trait layout-best" : "layout-trait"}
                >
                  <dt>{t(`place.trait.${trait}`)}</dt>
                  <dd>
                    {traitText(layout, trait, units)}
                    {isBest(layouts, index, trait) ? (
                      <span className="layout-mark"> {t("place.best")}</span>
                    ) : null}
                  </dd>
                </div>
              ))}
            </dl>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

/** Better than every other layout by more than rounding hides. */
function isBest(layouts: readonly Layout[], index: number, trait: Trait): boolean {
  const own = layouts[index]!.traits[trait] * better[trait];
  return layouts.every((other, at) => at === index || other.traits[trait] * better[trait] > own + 0.005);
}

function traitText({ traits: values }: Layout, trait: Trait, units: Units): string {
  switch (trait) {
    case "worstDarkWalk":
      return Number.isFinite(values[trait]) ? lengthText(values[trait], units) : t("place.not-lit");
    case "spillArea":
      return areaText(values[trait], units);
    case "leastMargin":
      return lengthText(values[trait], units);
    case "alignment":
      return percentText(values[trait]);
  }
}
