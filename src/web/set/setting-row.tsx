import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";
import { type DeviceSettings, type SettingName, sources, sourceTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { TextBox } from "../fields/index.ts";
import { VerifyMark } from "../findings/evidence.tsx";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/set.ts";
import { choose, inFile, label } from "./choose.ts";
import { SettingFields } from "./setting-fields.tsx";
import { valueWord } from "./setting-words.ts";

interface SettingRowProps {
  readonly job: OpenJob;
  readonly device: string;
  readonly name: SettingName;
  readonly settings: DeviceSettings;
  /** What it would be if nobody had chosen. */
  readonly derived: DeviceSettings;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** One setting: its value, whether a person chose it or why it was derived; opened: where it is chosen. */
export function SettingRow({ job, device, name, settings, derived, open, onOpen }: SettingRowProps) {
  const setting = settings[name];
  const chosen = setting.kind === "chosen";
  const word = inFile(job, device)?.deviceLabels?.[name];
  return (
    <Disclosure className="set-setting" isExpanded={open} onExpandedChange={onOpen}>
      <Heading level={4}>
        <Button slot="trigger" className="line-button set-setting-trigger">
          <svg viewBox="0 0 12 12" aria-hidden="true" className="more-sign">
            <path d="M4 2l4 4-4 4" />
          </svg>
          <span className="set-setting-name">{t(`set.name.${name}`)}</span>
          <span className={chosen ? "set-value set-value-chosen" : "set-value"}>
            {valueWord(name, setting.value)}
            {word ? <span className="hint"> · {word}</span> : null}
          </span>
          <span className="set-setting-why hint">
            {chosen ? (setting.reason ?? t("set.chosen.reason")) : spoken(setting.reason)}
          </span>
          <span className={chosen ? "set-mark set-mark-chosen" : "set-mark"}>
            {t(chosen ? "set.chosen" : "set.derived")}
          </span>
        </Button>
      </Heading>
      <DisclosurePanel className="set-setting-panel">
        {open ? (
          <div className="stack">
            {setting.kind === "derived" && setting.assumption ? (
              <p className="hint">{t("set.rests-on", { assumption: spoken(setting.assumption) })}</p>
            ) : null}
            {job.readOnly ? null : (
              <SettingFields job={job} device={device} name={name} settings={settings} />
            )}
            {chosen && !job.readOnly ? (
              <Button
                className="button set-back"
                onPress={() => choose(job, device, { name, value: undefined })}
              >
                {t("set.back", { value: valueWord(name, derived[name].value) })}
              </Button>
            ) : null}
            {job.readOnly ? null : (
              <TextBox
                label={t("set.labels")}
                value={word ?? ""}
                placeholder={t("set.labels.example")}
                hint={t("set.labels.hint")}
                onChange={(next) => label(job, device, { name, word: next })}
              />
            )}
            {setting.kind === "derived" ? (
              <p className="hint">
                {t("set.source")}: {spoken(sourceTitle(setting.source))}{" "}
                {sources[setting.source].verify ? <VerifyMark /> : null}
              </p>
            ) : null}
          </div>
        ) : null}
      </DisclosurePanel>
    </Disclosure>
  );
}
