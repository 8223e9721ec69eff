import { Button } from "react-aria-components";
import {
  backgroundLevels,
  type DeviceSettings,
  outputKindOf,
  type SettingName,
  type SettingValues,
} from "#engine";
import type { OpenJob } from "../contract.ts";
import { Choice, FigureField } from "../fields/index.ts";
import { t } from "../texts/set.ts";
import { choose, inFile, keepOn } from "./choose.ts";
import { LightReadingsForm } from "./light-readings.tsx";
import { valueWord } from "./setting-words.ts";

interface SettingFieldsProps {
  readonly job: OpenJob;
  readonly device: string;
  readonly settings: DeviceSettings;
}

/** Settings that are one word out of a few. */
const words = {
  mode: ["automatic", "semi-automatic"],
  button: ["on-only", "on-and-off"],
  sensitivity: ["low", "medium", "high"],
  soundSensitivity: ["off", "low", "medium", "high"],
  mask: ["none", "as-drawn"],
  lock: ["open", "locked"],
  testMode: ["off", "on"],
  groupRole: ["alone", "master", "slave", "parallel"],
} as const satisfies { readonly [Name in SettingName]?: readonly SettingValues[Name][] };
type WordName = keyof typeof words;

/** Where one chooses the value of a setting. */
export function SettingFields({ name, ...of }: SettingFieldsProps & { readonly name: SettingName }) {
  switch (name) {
    case "offDelay":
      return <DelayField {...of} />;
    case "output":
      return <OutputFields {...of} />;
    case "impulse":
      return <ImpulseFields {...of} />;
    case "threshold":
      return <ThresholdFields {...of} />;
    default:
      return <WordChoice {...of} name={name} />;
  }
}

function WordChoice({ job, device, settings, name }: SettingFieldsProps & { readonly name: WordName }) {
  const options: readonly SettingValues[WordName][] = words[name];
  return (
    <Choice
      label={t(`set.name.${name}`)}
      value={settings[name].value}
      options={options.map((value) => ({ value, word: valueWord(name, value) }))}
      onChange={(value) => choose(job, device, { name, value })}
    />
  );
}

function DelayField({ job, device, settings }: SettingFieldsProps) {
  return (
    <>
      <FigureField
        label={t("set.delay.minutes")}
        value={Math.round((settings.offDelay.value / 60) * 100) / 100}
        least={0.05}
        most={600}
        unit="min"
        onChange={(minutes) =>
          choose(job, device, { name: "offDelay", value: Math.round(minutes * 60 * 10) / 10 })
        }
      />
      {inFile(job, device)?.recommended === undefined || job.readOnly ? null : (
        <div>
          <Button className="button" onPress={() => keepOn(job, device, { recommended: undefined })}>
            {t("set.delay.forget")}
          </Button>
        </div>
      )}
    </>
  );
}

const outputWords = ["switch", "two-level", "dimming-broadcast", "addressed-bus"] as const;

function OutputFields({ job, device, settings }: SettingFieldsProps) {
  const { value } = settings.output;
  const set = (output: SettingValues["output"]): void =>
    choose(job, device, { name: "output", value: output });
  const background = typeof value === "object" ? value.background : backgroundLevels.least;
  return (
    <>
      <Choice
        label={t("set.name.output")}
        value={outputKindOf(value)}
        options={outputWords.map((word) => ({ value: word, word: t(`set.output.${word}`) }))}
        onChange={(word) => set(word === "two-level" ? { background } : word)}
      />
      {typeof value === "object" ? (
        <FigureField
          label={t("set.output.background")}
          value={Math.round(value.background * 100)}
          least={1}
          most={99}
          unit="%"
          onChange={(percent) => set({ background: percent / 100 })}
        />
      ) : null}
    </>
  );
}

const usualPulse = { pulse: 1, pause: 9 };

function ImpulseFields({ job, device, settings }: SettingFieldsProps) {
  const { value } = settings.impulse;
  const timer = inFile(job, device)?.timer?.time;
  const set = (impulse: SettingValues["impulse"]): void =>
    choose(job, device, { name: "impulse", value: impulse });
  return (
    <>
      <Choice
        label={t("set.name.impulse")}
        value={value === "none" ? "contact" : "pulses"}
        options={[
          { value: "contact", word: t("set.impulse.contact") },
          { value: "pulses", word: t("set.impulse.send") },
        ]}
        onChange={(word) => set(word === "contact" ? "none" : usualPulse)}
      />
      <div className="fields">
        {value === "none" ? null : (
          <>
            <FigureField
              label={t("set.impulse.pulse")}
              value={value.pulse}
              least={0.1}
              most={3600}
              unit="s"
              onChange={(pulse) => set({ ...value, pulse })}
            />
            <FigureField
              label={t("set.impulse.pause")}
              value={value.pause}
              least={0.1}
              most={3600}
              unit="s"
              onChange={(pause) => set({ ...value, pause })}
            />
          </>
        )}
        <FigureField
          label={t("set.impulse.timer")}
          value={timer}
          least={1}
          most={86_400}
          unit="s"
          wide
          onChange={(time) => keepOn(job, device, { timer: { time } })}
          onClear={() => keepOn(job, device, { timer: undefined })}
        />
      </div>
    </>
  );
}

/** A threshold to begin with, where somebody wants one before anything was read. [lx] */
const firstThreshold = 100;

function ThresholdFields({ job, device, settings }: SettingFieldsProps) {
  const { value } = settings.threshold;
  const set = (threshold: SettingValues["threshold"]): void =>
    choose(job, device, { name: "threshold", value: threshold });
  return (
    <>
      <Choice
        label={t("set.name.threshold")}
        value={value === "off" ? "off" : "set"}
        options={[
          { value: "off", word: t("set.threshold.off") },
          { value: "set", word: t("set.threshold.set") },
        ]}
        onChange={(word) => set(word === "off" ? "off" : firstThreshold)}
      />
      {value === "off" ? null : (
        <FigureField
          label={t("set.threshold.lux")}
          value={Math.round(value)}
          least={1}
          most={100_000}
          unit="lx"
          onChange={set}
        />
      )}
      <LightReadingsForm key={device} job={job} device={device} />
    </>
  );
}
