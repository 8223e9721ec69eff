import { useState } from "react";
import { Button, Input, Label, SearchField } from "react-aria-components";
import { degreesOf, radiansOf } from "#engine";
import type { JobUnderlay } from "#job";
import { PlaceFields } from "../../cards/place-fields.tsx";
import type { OpenJob } from "../../contract.ts";
import { AngleField, More, Tick } from "../../fields/index.ts";
import { t } from "../../texts/index.ts";
import { DrawingLuminaires } from "./drawing-luminaires.tsx";

interface DrawingFieldsProps {
  readonly job: OpenJob;
  readonly underlay: JobUnderlay;
}

/** From so many layers on one may look for one by its name. */
const manyLayers = 12;

/** A drawing under the plan: shown or not, layer by layer, where it lies, and away with it. */
export function DrawingFields({ job, underlay }: DrawingFieldsProps) {
  const [looked, setLooked] = useState("");
  const set = (fields: Partial<JobUnderlay>): void =>
    job.keep("drawings.change", [{ do: "set", kind: "underlays", id: underlay.id, fields }]);
  const { layers } = underlay;
  const found = layers.filter(({ name }) => name.toLowerCase().includes(looked.trim().toLowerCase()));
  const show = (names: ReadonlySet<string>, shown: boolean): void =>
    set({ layers: layers.map((layer) => (names.has(layer.name) ? { ...layer, shown } : layer)) });
  const all = new Set(found.map(({ name }) => name));
  return (
    <section className="stack" aria-label={underlay.name || underlay.file}>
      <Tick on={underlay.shown} onChange={(shown) => set({ shown })} disabled={job.readOnly}>
        {underlay.name || underlay.file}
      </Tick>
      {layers.length > 1 ? (
        <More
          word={t("drawings.layers", {
            shown: layers.filter(({ shown }) => shown).length,
            count: layers.length,
          })}
        >
          {layers.length > manyLayers ? (
            <SearchField className="field" value={looked} onChange={setLooked}>
              <Label className="field-label">{t("drawings.find")}</Label>
              <span className="field-box">
                <Input className="field-input" />
              </span>
            </SearchField>
          ) : null}
          <div className="row">
            <Button className="button" onPress={() => show(all, true)} isDisabled={job.readOnly}>
              {t("drawings.all")}
            </Button>
            <Button className="button" onPress={() => show(all, false)} isDisabled={job.readOnly}>
              {t("drawings.no-layer")}
            </Button>
          </div>
          <div className="home-plan-layers">
            {found.map(({ name, shown }) => (
              <Tick
                key={name}
                on={shown}
                onChange={(on) => show(new Set([name]), on)}
                disabled={job.readOnly || !underlay.shown}
              >
                {name || t("drawings.nameless")}
              </Tick>
            ))}
          </div>
        </More>
      ) : null}
      {(underlay.blocks?.length ?? 0) > 0 ? <DrawingLuminaires job={job} underlay={underlay} /> : null}
      <More word={t("drawings.place")}>
        <PlaceFields at={underlay.origin} onChange={(origin) => set({ origin: [origin[0], origin[1]] })} />
        <AngleField
          label={t("card.turn")}
          value={radiansOf(underlay.turn)}
          onChange={(turn) => set({ turn: Math.round(degreesOf(turn) * 1e6) / 1e6 })}
        />
        <p className="hint">{t("drawings.place.hint")}</p>
        <Button
          className="button"
          isDisabled={job.readOnly}
          onPress={() => job.keep("drawings.remove", [{ do: "remove", kind: "underlays", id: underlay.id }])}
        >
          {t("drawings.remove")}
        </Button>
      </More>
    </section>
  );
}
