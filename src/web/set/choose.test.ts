import { describe, expect, test } from "vitest";
import { settingsOfSite } from "#engine";
import { demoJob, type JobFile, settingsOfJob, siteOf } from "#job";
import { remedyActions } from "../findings/remedy-actions.ts";
import { delayText } from "../texts/index.ts";
import { withChoice } from "./choose.ts";
import { atAGlance, valueWord } from "./setting-words.ts";

describe("choosing", () => {
  test("a choice stands under the file's name beside the others, and goes without a trace", () => {
    const chosen = withChoice({ mode: "automatic" }, "threshold", 120);
    expect(chosen).toEqual({ mode: "automatic", brightnessThreshold: 120 });
    expect(withChoice(chosen, "threshold", undefined)).toEqual({ mode: "automatic" });
    expect(withChoice({ buttonRole: "on-only" }, "button", undefined)).toBe(undefined);
    expect(withChoice(undefined, "offDelay", 90)).toEqual({ offDelay: 90 });
  });
});

describe("words", () => {
  test("delays as one sets them", () => {
    expect([30, 60, 90, 150, 600].map(delayText)).toEqual(["30 s", "1 min", "90 s", "2.5 min", "10 min"]);
  });
  test("a threshold is a whole figure or off, pulses say both times", () => {
    expect(valueWord("threshold", 149.6)).toBe("150 lx");
    expect(valueWord("threshold", "off")).toBe("off");
    expect(valueWord("impulse", { pulse: 1, pause: 9 })).toBe("1 s on, 9 s pause");
  });
  test("at a glance only what a person chose is marked", () => {
    const [device] = reviewed({ offDelay: 90 }).devices;
    expect(atAGlance(device!.settings).map(({ word, chosen }) => [word, chosen])).toEqual([
      ["automatic", false],
      ["90 s", true],
      ["no threshold", false],
      ["medium sensitivity", false],
    ]);
  });
});

/** The first detector of the demo's corridor alone, with these settings, in a room without daylight. */
function jobWith(settings: object, more: object = {}): JobFile {
  const demo = demoJob();
  const detector = demo.detectors.find(({ room }) => room === "corridor")!;
  return {
    ...demo,
    rooms: demo.rooms.map((room) => (room.id === "corridor" ? { ...room, daylight: false } : room)),
    detectors: [{ ...detector, luminaires: [], settings, ...more }],
  };
}
const reviewed = (settings: object, more: object = {}) => {
  const job = jobWith(settings, more);
  return settingsOfSite(siteOf(job).site, settingsOfJob(job).choices);
};

describe("remedies", () => {
  test.each<[string, object, object?]>([
    ["threshold-without-daylight", { brightnessThreshold: 200 }],
    ["absence-control-in-dark-way", { mode: "semi-automatic" }],
    ["sound-without-microphone", { soundSensitivity: "high" }],
    ["left-in-test-mode", { testMode: "on" }],
    ["impulse-without-timer", { impulse: { pulse: 1, pause: 9 } }],
    ["impulse-slower-than-timer", { impulse: { pulse: 1, pause: 9 } }, { timer: { time: 5 } }],
  ])("what mends %s takes the finding away, in the settings alone", (code, settings, more = {}) => {
    const job = jobWith(settings, more);
    const { site } = siteOf(job);
    const codes = (given: object): readonly string[] =>
      reviewed(given, more).findings.map((finding) => finding.code);
    const finding = reviewed(settings, more).findings.find((one) => one.code === code)!;
    const [remedy] = remedyActions[finding.code]!(finding, site);
    if (remedy?.do !== "edit") throw new Error("no remedy");
    const [step] = remedy.steps as unknown as readonly [{ readonly fields: { readonly settings?: object } }];
    expect(Object.keys(step.fields)).toEqual(["settings"]);
    // Pulses that are too slow are derived too: only a longer timer mends those.
    if (code !== "impulse-slower-than-timer") expect(codes(step.fields.settings ?? {})).not.toContain(code);
  });
  test("where nothing was chosen there is nothing to take back", () => {
    const { site } = siteOf(jobWith({}));
    const finding = { code: "left-in-test-mode", records: [site.detectors[0]!.id] } as never;
    expect(remedyActions["left-in-test-mode"]!(finding, site)).toEqual([undefined]);
  });
});
