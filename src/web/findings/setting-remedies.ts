import type { Detector, Finding, ProblemCode, Site } from "#engine";
import type { JobSettings } from "#job";
import type { EditStep } from "../contract.ts";
import type { TextKey } from "../texts/index.ts";
import type { RemediesOf, Remedy } from "./remedy.ts";

/** A detector of the site carries along what the file holds of its settings. */
type WithSettings = Detector & { readonly settings?: JobSettings };

/** The detectors that a finding speaks of. */
const devicesIn = (finding: Finding, site: Site): readonly WithSettings[] =>
  finding.records.flatMap(
    (id) => (site.detectors as readonly WithSettings[]).find((one) => one.id === id) ?? [],
  );

/** Changes the settings of some devices; where nothing changes there is no button. */
function remedy(
  word: TextKey,
  devices: readonly WithSettings[],
  change: (settings: JobSettings) => JobSettings,
): Remedy | undefined {
  const steps = devices.flatMap((device): readonly EditStep[] => {
    const before = device.settings ?? {};
    const after = change(before);
    if (JSON.stringify(before) === JSON.stringify(after)) return [];
    const settings = Object.keys(after).length === 0 ? undefined : after;
    return [{ do: "set", kind: "detectors", id: device.id, fields: { settings } } as unknown as EditStep];
  });
  return steps.length === 0 ? undefined : { do: "edit", word, steps };
}

/** Chooses a value. */
const to =
  (word: TextKey, chosen: JobSettings): RemediesOf =>
  (finding, site) => [remedy(word, devicesIn(finding, site), (settings) => ({ ...settings, ...chosen }))];

/** Takes a choice back, so that the setting is derived again. */
const without =
  (word: TextKey, name: keyof JobSettings): RemediesOf =>
  (finding, site) => [remedy(word, devicesIn(finding, site), ({ [name]: _, ...others }) => others)];

const soundOff = to("findings.remedy.sound-off", { soundSensitivity: "off" });
const automatic = to("findings.remedy.automatic", { mode: "automatic" });
const thresholdOff = to("findings.remedy.threshold-off", { brightnessThreshold: "off" });
const derived = "findings.remedy.derived" satisfies TextKey;

export const settingRemedies: Readonly<Partial<Record<ProblemCode, RemediesOf>>> = {
  "threshold-without-daylight": thresholdOff,
  "threshold-on-slave": thresholdOff,
  "sound-next-to-fan": soundOff,
  "sound-without-microphone": soundOff,
  "delay-above-rule": without("findings.remedy.delay-allowed", "offDelay"),
  "absence-control-in-dark-way": automatic,
  "absence-control-maybe-dark": automatic,
  "absence-control-without-button": automatic,
  "left-in-test-mode": without("findings.remedy.test-off", "testMode"),
  "impulse-slower-than-timer": without(derived, "impulse"),
  "impulse-without-timer": to("findings.remedy.hold-contact", { impulse: "none" }),
  "mask-left-out": to("findings.remedy.mask-on", { mask: "as-drawn" }),
  "alone-on-shared-load": without(derived, "groupRole"),
  "parallel-delays-differ": without(derived, "offDelay"),
  "parallel-thresholds": (finding, site) => [
    remedy("findings.remedy.one-threshold", devicesIn(finding, site).slice(1), (settings) => ({
      ...settings,
      brightnessThreshold: "off",
    })),
  ],
  "slaves-without-master": (finding, site) => [
    remedy("findings.remedy.make-master", devicesIn(finding, site).slice(0, 1), (settings) => ({
      ...settings,
      groupRole: "master",
    })),
  ],
  "several-masters": (finding, site) => [
    remedy("findings.remedy.one-master", devicesIn(finding, site).slice(1), (settings) => ({
      ...settings,
      groupRole: "slave",
    })),
  ],
};
