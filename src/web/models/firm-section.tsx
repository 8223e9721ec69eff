import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { DetectorModel } from "#engine";
import { More, Say } from "../fields/index.ts";
import { saveFile } from "../fields/save-file.ts";
import { t } from "../texts/models.ts";
import { firmListText, keepInFirm, readFirmList, takeFromFirm, useFirmModels } from "./firm-list.ts";
import { troublesOf } from "./firm-list-words.ts";

interface FirmSectionProps {
  /** Models that the job has already. */
  readonly inJob: readonly DetectorModel[];
  readonly onUse: (model: DetectorModel) => void;
}

/** The firm's own list, kept in this browser across jobs, passed on as one file. */
export function FirmSection({ inJob, onUse }: FirmSectionProps) {
  const models = useFirmModels();
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const [read, setRead] = useState<number | undefined>();
  const take = async (file: File) => {
    const found = readFirmList(await file.text());
    const own = found.models.filter(({ demo }) => demo !== true);
    keepInFirm(own);
    setTroubles(troublesOf(found));
    setRead(own.length);
  };
  return (
    <More word={t("models.firm", { count: models.length })}>
      <div className="stack">
        <p className="hint">{t(models.length === 0 ? "models.firm.none" : "models.firm.kept")}</p>
        <ul className="models-list">
          {models.map((model) => (
            <li key={model.id} className="models-row">
              <span className="models-name">{model.title}</span>
              {inJob.some(({ id }) => id === model.id) ? (
                <span className="hint">{t("models.firm.in-job")}</span>
              ) : (
                <Button className="button" onPress={() => onUse(model)}>
                  {t("models.firm.use")}
                </Button>
              )}
              <Button
                className="button button-quiet button-sign"
                aria-label={t("models.firm.remove", { title: model.title })}
                onPress={() => takeFromFirm(model.id)}
              >
                <svg viewBox="0 0 18 18" aria-hidden="true">
                  <path d="M4 4l10 10M14 4 4 14" />
                </svg>
              </Button>
            </li>
          ))}
        </ul>
        {read === undefined ? null : <p role="status">{t("models.firm.read", { count: read })}</p>}
        {troubles.length > 0 ? (
          <Say severity="must" live>
            {troubles.map((trouble) => (
              <p key={trouble}>{trouble}</p>
            ))}
          </Say>
        ) : null}
        <div className="row">
          <FileTrigger acceptedFileTypes={[".json"]} onSelect={(files) => files?.[0] && void take(files[0])}>
            <Button className="button">{t("models.firm.open")}</Button>
          </FileTrigger>
          <Button
            className="button"
            isDisabled={models.length === 0}
            onPress={() => saveFile({ name: "detector-models.json", text: firmListText(models) })}
          >
            {t("models.firm.save")}
          </Button>
        </div>
      </div>
    </More>
  );
}
