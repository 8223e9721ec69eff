import { useState } from "react";
import { Button } from "react-aria-components";
import type { DetectorModel } from "#engine";
import type { ModelsEditorProps } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { saveFile } from "../fields/save-file.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/models.ts";
import { keepInFirm } from "./firm-list.ts";
import { FirmSection } from "./firm-section.tsx";
import { draftOf, emptyDraft, type ModelDraft } from "./model-draft.ts";
import { ModelForm } from "./model-form.tsx";
import { orderCsv, orderList } from "./order-list.ts";
import { ZonePicture } from "./zone-picture.tsx";
import "./models.css";

/** Models that can be bought before those of the demo. */
const ownFirst = (models: readonly DetectorModel[]): readonly DetectorModel[] => [
  ...models.filter(({ demo }) => demo !== true),
  ...models.filter(({ demo }) => demo === true),
];

/** The detectors that a job may use: each a data sheet, the firm's own list, and the list to order by. */
export function ModelsEditor({ job, model, onClose }: ModelsEditorProps) {
  const start = job.site.models.find(({ id }) => id === model);
  const [draft, setDraft] = useState<ModelDraft | undefined>(
    start === undefined ? undefined : draftOf(start),
  );
  const [refused, setRefused] = useState<readonly DetectorModel[]>([]);
  const units = useUnits();
  const usedBy = (id: string | undefined) =>
    job.site.detectors.filter((detector) => detector.model === id).length;
  if (draft !== undefined)
    return (
      <div className="models">
        <ModelForm
          draft={draft}
          onChange={(change) => setDraft((now) => now && change(now))}
          used={usedBy(draft.id)}
          onBack={() => setDraft(undefined)}
          onSave={(make, keep) => {
            const record = make(draft.id ?? job.newId("models"));
            job.edit("models.edit.save", [{ do: "put", kind: "models", record }]);
            if (keep === "job-and-firm") keepInFirm([record]);
            setDraft(undefined);
          }}
          onDelete={
            draft.id === undefined
              ? undefined
              : () => {
                  job.edit("models.edit.delete", [{ do: "remove", kind: "models", id: draft.id! }]);
                  setDraft(undefined);
                }
          }
        />
      </div>
    );
  const order = () => {
    const list = orderList(job.site);
    setRefused("invented" in list ? list.invented : []);
    if ("rows" in list)
      saveFile({
        name: `${job.site.name || "job"} order.csv`,
        text: orderCsv(list.rows, [
          t("models.order.model"),
          t("models.order.count"),
          t("models.order.cost"),
          t("models.order.sum"),
        ]),
        type: "text/csv",
      });
  };
  return (
    <div className="models stack">
      <div className="row row-apart">
        <h2 className="models-title">{t("models.list")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("models.close")}
        </Button>
      </div>
      <Button className="button button-first" isDisabled={job.readOnly} onPress={() => setDraft(emptyDraft)}>
        {t("models.add")}
      </Button>
      {job.site.models.length === 0 ? <p>{t("models.none")}</p> : null}
      <ul className="models-list">
        {ownFirst(job.site.models).map((one) => (
          <li key={one.id} className="models-row">
            <Button className="models-open" onPress={() => setDraft(draftOf(one))}>
              <ZonePicture zones={one.zones} height={2.5} size="small" />
              <span className="models-name">
                {one.title}
                <span className="hint models-facts">
                  {t("models.facts", {
                    min: lengthText(one.mounting.min, units),
                    max: lengthText(one.mounting.max, units),
                    count: usedBy(one.id),
                  })}
                  {one.demo === true ? ` · ${t("models.invented")}` : ""}
                </span>
              </span>
            </Button>
          </li>
        ))}
      </ul>
      <FirmSection
        inJob={job.site.models}
        onUse={(record) => job.edit("models.edit.use", [{ do: "put", kind: "models", record }])}
      />
      {refused.length > 0 ? (
        <Say severity="must" live>
          {t("models.order.refused", { titles: refused.map(({ title }) => title).join("; ") })}
        </Say>
      ) : null}
      <div>
        <Button className="button" onPress={order} isDisabled={job.site.detectors.length === 0}>
          {t("models.order")}
        </Button>
      </div>
    </div>
  );
}
