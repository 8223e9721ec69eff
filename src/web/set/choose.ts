import type { Detector, SettingName, SettingValues } from "#engine";
import { type JobDetector, type JobSettings, settingInFile } from "#job";
import { setFields } from "../cards/edits.ts";
import type { OpenJob } from "../contract.ts";

/** A detector as it stands in the file, with what people set on it. */
export const inFile = (job: OpenJob, device: string): JobDetector | undefined =>
  job.file.detectors.find(({ id }) => id === device);

/** Sets fields of a detector that stand in the file alone, as one step of undo; undefined takes one away. */
export const keepOn = (
  job: OpenJob,
  device: string,
  fields: {
    readonly [Name in "settings" | "lightReadings" | "timer" | "deviceLabels" | "recommended"]?:
      | JobDetector[Name]
      | undefined;
  },
): void => setFields(job, { kind: "detectors", id: device }, fields as Partial<Detector>);

/** Settings with one value chosen; undefined: no longer chosen, so that it is derived again. Undefined where nothing is left. */
export function withChoice<Name extends SettingName>(
  settings: JobSettings | undefined,
  name: Name,
  value: SettingValues[Name] | undefined,
): JobSettings | undefined {
  const { [settingInFile(name)]: _, ...others } = settings ?? {};
  const next: JobSettings = value === undefined ? others : { ...others, [settingInFile(name)]: value };
  return Object.keys(next).length === 0 ? undefined : next;
}

/** Chooses a value for one setting of a detector, or lets it be derived again. */
export const choose = <Name extends SettingName>(
  job: OpenJob,
  device: string,
  choice: { readonly name: Name; readonly value: SettingValues[Name] | undefined },
): void =>
  keepOn(job, device, { settings: withChoice(inFile(job, device)?.settings, choice.name, choice.value) });

/** What the device at hand calls a setting; an empty word is none. */
export function label(
  job: OpenJob,
  device: string,
  of: { readonly name: SettingName; readonly word: string },
): void {
  const { [of.name]: _, ...others } = inFile(job, device)?.deviceLabels ?? {};
  const next = of.word === "" ? others : { ...others, [of.name]: of.word };
  keepOn(job, device, { deviceLabels: Object.keys(next).length === 0 ? undefined : next });
}
