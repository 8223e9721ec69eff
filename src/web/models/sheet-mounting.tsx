import { Button } from "react-aria-components";
import type { DetectorModel, Fixing } from "#engine";
import { LengthField, Maybe, TextBox, Tick } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import { type SheetWiringProps, setIn } from "./sheet-parts.tsx";

const fixings: readonly Fixing[] = ["box", "surface", "ceiling-panel"];

/** How it is fixed, what its ceiling must be like, where cables enter, and what its indicators mean. */
export function SheetMounting({ draft, onChange }: SheetWiringProps) {
  const { rest } = draft;
  const set = setIn(onChange);
  const thickness = rest.ceilingThickness;
  const setThickness = (part: { readonly min?: number; readonly max?: number | undefined }): void =>
    set(({ ceilingThickness }) => {
      const next = { min: 0, ...ceilingThickness, ...part };
      return { ceilingThickness: next.max === undefined ? undefined : { min: next.min, max: next.max } };
    });
  const unknown = t("fields.unknown");
  const signs = rest.indicators ?? [];
  const setSigns = (
    change: (now: NonNullable<DetectorModel["indicators"]>) => NonNullable<DetectorModel["indicators"]>,
  ): void => set(({ indicators = [] }) => ({ indicators: change(indicators) }));
  return (
    <div className="stack">
      <div className="fields fields-roomy">
        <Maybe
          label={t("models.fixing")}
          value={rest.fixing}
          options={fixings.map((value) => ({ value, word: t(`models.fixing.${value}`) }))}
          onChange={(fixing) =>
            set(({ otherFixings }) => ({
              fixing,
              otherFixings: fixing === undefined ? undefined : otherFixings?.filter((one) => one !== fixing),
            }))
          }
        />
        <LengthField
          label={t("models.depth")}
          of="part"
          value={rest.depth}
          placeholder={unknown}
          least={0.005}
          most={0.5}
          onChange={(depth) => set(() => ({ depth }))}
          onClear={() => set(() => ({ depth: undefined }))}
        />
        <LengthField
          label={t("models.ceiling.most")}
          of="part"
          value={thickness?.max}
          placeholder={unknown}
          least={0.001}
          most={0.5}
          onChange={(max) => setThickness({ max })}
          onClear={() => setThickness({ max: undefined })}
        />
        {thickness === undefined ? null : (
          <LengthField
            label={t("models.ceiling.least")}
            of="part"
            value={thickness.min}
            least={0}
            most={0.5}
            onChange={(min) => setThickness({ min })}
          />
        )}
        <Maybe
          label={t("models.entry")}
          value={rest.cableEntry}
          options={(["back", "side", "either"] as const).map((value) => ({
            value,
            word: t(`models.entry.${value}`),
          }))}
          onChange={(cableEntry) => set(() => ({ cableEntry }))}
        />
        <Maybe
          label={t("models.seal")}
          value={rest.entrySeal}
          options={(["none", "grommet", "gland"] as const).map((value) => ({
            value,
            word: t(`models.seal.${value}`),
          }))}
          onChange={(entrySeal) => set(() => ({ entrySeal }))}
        />
      </div>
      {rest.fixing === undefined ? null : (
        <fieldset className="plain-set">
          <legend className="field-label">{t("models.fixing.others")}</legend>
          {fixings
            .filter((one) => one !== rest.fixing)
            .map((one) => (
              <Tick
                key={one}
                on={rest.otherFixings?.includes(one) === true}
                onChange={(on) =>
                  set(({ otherFixings = [] }) => ({
                    otherFixings: on ? [...otherFixings, one] : otherFixings.filter((other) => other !== one),
                  }))
                }
              >
                {t(`models.fixing.${one}`)}
              </Tick>
            ))}
        </fieldset>
      )}
      <fieldset className="plain-set stack">
        <legend className="field-label">{t("models.indicators")}</legend>
        {signs.map(({ sign, meaning }, index) => (
          // Rows have no name of their own, and are only added at the end.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <div key={index} className="fields fields-roomy">
            <TextBox
              label={t("models.indicators.sign")}
              value={sign}
              onChange={(text) =>
                setSigns((now) => now.map((one, i) => (i === index ? { ...one, sign: text } : one)))
              }
            />
            <TextBox
              label={t("models.indicators.meaning")}
              value={meaning}
              onChange={(text) =>
                setSigns((now) => now.map((one, i) => (i === index ? { ...one, meaning: text } : one)))
              }
            />
            <Button
              className="button button-quiet"
              onPress={() => setSigns((now) => now.filter((_, i) => i !== index))}
            >
              {t("models.indicators.remove", { number: index + 1 })}
            </Button>
          </div>
        ))}
        <div>
          <Button className="button" onPress={() => setSigns((now) => [...now, { sign: "", meaning: "" }])}>
            {t("models.indicators.add")}
          </Button>
        </div>
      </fieldset>
    </div>
  );
}
