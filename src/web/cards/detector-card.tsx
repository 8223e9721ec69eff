import { Button } from "react-aria-components";
import type { Detector } from "#engine";
import type { Calculator } from "../calculate/calculator.ts";
import { useCalculated } from "../calculate/use-calculated.ts";
import type { OpenJob } from "../contract.ts";
import { AngleField, LengthField, More, Pick, Say, TextBox, Tick } from "../fields/index.ts";
import { regionArea } from "../plan/region-area.ts";
import { useUnits } from "../settings/preferences.ts";
import { areaText, degreesText, lengthText, t } from "../texts/index.ts";
import { setFields } from "./edits.ts";
import { Figures } from "./figures.tsx";
import { PlaceFields } from "./place-fields.tsx";

interface DetectorCardProps {
  readonly job: OpenJob;
  readonly device: Detector;
  readonly calculator: Calculator;
  readonly onEye: () => void;
  readonly onDay: () => void;
  readonly onModel: (id: string) => void;
}

const kinds = ["seated", "towards", "across", "sound"] as const;

/** Floor in sight of the device; follows while it is dragged. */
function ZoneFigures({ calculator, device }: { readonly calculator: Calculator; readonly device: string }) {
  const units = useUnits();
  const zones = useCalculated(calculator, (known) => known.zones.get(device));
  return (
    <Figures
      rows={kinds.flatMap((kind) => {
        const region = zones?.[kind];
        return region ? [[t(`zone.${kind}`), areaText(regionArea(region), units)] as const] : [];
      })}
    />
  );
}

export function DetectorCard({ job, device, calculator, onEye, onDay, onModel }: DetectorCardProps) {
  const units = useUnits();
  const { site } = job;
  const model = site.models.find(({ id }) => id === device.model);
  const set = (fields: Partial<Detector>): void =>
    setFields(job, { kind: "detectors", id: device.id }, fields);
  const outside = model && (device.height < model.mounting.min || device.height > model.mounting.max);
  const neighbours = new Set(
    site.openings.filter(({ rooms }) => rooms.includes(device.room)).flatMap(({ rooms }) => rooms),
  );
  return (
    <div className="stack">
      <Pick
        label={t("card.detector.model")}
        value={device.model}
        options={site.models.map(({ id, title }) => ({ value: id, word: title }))}
        onChange={(id) => set({ model: id })}
      />
      {outside ? (
        <Say severity="must">
          {t("card.detector.mounting", {
            least: lengthText(model.mounting.min, units),
            most: lengthText(model.mounting.max, units),
          })}
        </Say>
      ) : null}
      <div className="fields">
        <LengthField
          label={t("card.height")}
          value={device.height}
          least={0.5}
          onChange={(height) => set({ height })}
        />
        <AngleField label={t("card.turn")} value={device.turn} onChange={(turn) => set({ turn })} />
      </div>
      <ZoneFigures calculator={calculator} device={device.id} />
      <Button className="button button-first wide-button" onPress={onEye}>
        {t("card.detector.eye")}
      </Button>
      <Button className="button wide-button" onPress={onDay}>
        {t("card.day")}
      </Button>
      <More>
        <div className="stack">
          <TextBox
            label={t("card.detector.tag")}
            value={device.tag}
            needed
            onChange={(tag) => set({ tag })}
          />
          <PlaceFields at={device.at} onChange={(at) => set({ at })} />
          <fieldset className="plain-set">
            <legend className="field-label">{t("card.detector.controls")}</legend>
            {site.rooms
              .filter(({ id }) => neighbours.has(id) || id === device.room || device.controls.includes(id))
              .map(({ id, number, name }) => (
                <Tick
                  key={id}
                  on={device.controls.includes(id)}
                  onChange={(on) =>
                    set({
                      controls: on
                        ? [...device.controls, id]
                        : device.controls.filter((other) => other !== id),
                    })
                  }
                >
                  {`${number} ${name}`.trim()}
                </Tick>
              ))}
          </fieldset>
          <Tick on={device.pinned} onChange={(pinned) => set({ pinned })}>
            {t("card.detector.pinned")}
          </Tick>
          <p className="hint">
            {device.masks.length === 0
              ? t("card.detector.no-masks")
              : t("card.detector.masks", {
                  count: device.masks.length,
                  first: device.masks
                    .map(({ from, to }) => `${degreesText(from)} – ${degreesText(to)}`)
                    .join(", "),
                })}
          </p>
          {model ? (
            <Button className="button" onPress={() => onModel(model.id)}>
              {t("card.detector.data-sheet")}
            </Button>
          ) : null}
        </div>
      </More>
    </div>
  );
}
