import { useState } from "react";
import { Button } from "react-aria-components";
import { type Finding, type SettingName, settingsOf } from "#engine";
import type { OpenJob } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { remedyActions } from "../findings/remedy-actions.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/set.ts";
import { PlaceFacts } from "./place-facts.tsx";
import { SettingRow } from "./setting-row.tsx";
import "./set.css";

export interface SettingCardProps {
  readonly job: OpenJob;
  readonly device: string;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
}

/** In the order in which one sets them before the device goes up. */
const names: readonly SettingName[] = [
  "mode",
  "offDelay",
  "output",
  "threshold",
  "sensitivity",
  "soundSensitivity",
  "button",
  "groupRole",
  "impulse",
  "mask",
  "lock",
  "testMode",
];

/** What to set on one detector, and why. */
export function SettingCard({ job, device, store, actions }: SettingCardProps) {
  const known = usePart(store, ({ settings }) => ({ settings })).settings;
  const [opened, setOpened] = useState<SettingName | undefined>();
  const planned = known?.devices.find(({ context }) => context.device === device);
  if (!planned)
    return (
      <p className="hint" role="status">
        {t("set.device.gone")}
      </p>
    );
  const { context, settings } = planned;
  const derived = settingsOf(context);
  const findings = (known?.findings ?? []).filter(({ records }) => records.includes(device));
  return (
    <div className="stack">
      <div className="row row-apart">
        <h2 className="set-title">{context.tag}</h2>
        <Button className="button button-quiet" onPress={() => actions.select([])}>
          {t("set.all")}
        </Button>
      </div>
      <p className="hint set-under-title">{context.room}</p>
      {findings.map((finding) => (
        <DeviceFinding key={`${finding.code} ${finding.message}`} job={job} finding={finding} />
      ))}
      <div className="set-settings">
        {names.map((name) => (
          <SettingRow
            key={name}
            job={job}
            device={device}
            name={name}
            settings={settings}
            derived={derived}
            open={opened === name}
            onOpen={(open) => setOpened(open ? name : undefined)}
          />
        ))}
      </div>
      <Button
        className="button wide-button"
        onPress={() => store.set({ panel: { kind: "day", of: device } })}
      >
        {t("card.day")}
      </Button>
      {job.readOnly ? null : <PlaceFacts job={job} device={device} />}
    </div>
  );
}

function DeviceFinding({ job, finding }: { readonly job: OpenJob; readonly finding: Finding }) {
  const remedies = job.readOnly ? [] : (remedyActions[finding.code]?.(finding, job.site) ?? []);
  return (
    <Say severity={finding.severity}>
      <p>
        <span className="unseen">{t(`severity.${finding.severity}`)}: </span>
        {finding.message}
      </p>
      <p className="hint">{finding.remedy}</p>
      <div className="row">
        {remedies.map((remedy) =>
          remedy?.do === "edit" ? (
            <Button key={remedy.word} className="button" onPress={() => job.edit(remedy.word, remedy.steps)}>
              {t(remedy.word)}
            </Button>
          ) : null,
        )}
      </div>
    </Say>
  );
}
