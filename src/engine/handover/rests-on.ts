import { type Check, english, type Said, say } from "../check/index.ts";
import type { SiteSettings } from "../review/index.ts";
import type { WorkOrder, WorkStage } from "../site-test/index.ts";
import { type SourceId, sources } from "../source/index.ts";
import type { Handover, SourceUse, WiringRecord } from "./handover.ts";

type SettingName = keyof SiteSettings["devices"][number]["settings"];

/** What was taken for granted in checks, settings and wiring: each sentence once, the most frequent first. */
export function assumptionsOf(of: {
  readonly checks: readonly Check[];
  readonly settings: SiteSettings;
  readonly wiring: WiringRecord;
}): Handover["assumptions"] {
  const all = new Map<string, { readonly text: Said; readonly times: number }>();
  const count = (text: Said, by = 1): void => {
    const key = english(text);
    all.set(key, { text, times: (all.get(key)?.times ?? 0) + by });
  };
  for (const { assumptions } of of.checks) for (const text of assumptions) count(text);
  for (const { settings } of of.settings.devices)
    for (const setting of Object.values(settings))
      if (setting.kind === "derived" && setting.assumption !== undefined) count(setting.assumption);
  if (of.wiring.kind === "built")
    for (const { text, records } of of.wiring.review.assumptions) count(text, records.length);
  return [...all]
    .toSorted(([a, { times }], [b, { times: others }]) => others - times || (a < b ? -1 : 1))
    .map(([, counted]) => counted);
}

/** Sources that something in the papers was judged by, in the order of the register. */
export function sourcesOf(of: {
  readonly checks: readonly Check[];
  readonly settings: SiteSettings;
  readonly order: WorkOrder;
}): readonly SourceUse[] {
  // By the English words: what is said of several rooms alike is listed once.
  const used = new Map<SourceId, Map<string, Said>>();
  const use = (id: SourceId, what: Said): void => {
    used.set(id, (used.get(id) ?? new Map<string, Said>()).set(english(what), what));
  };
  for (const { source, what } of of.checks) use(source, what);
  for (const { settings } of of.settings.devices)
    for (const name of Object.keys(settings) as readonly SettingName[])
      if (settings[name].kind === "derived") use(settings[name].source, aSetting[name]);
  for (const { source, stage } of of.order.steps) use(source, aTest[stage]);
  return (Object.keys(sources) as readonly SourceId[]).flatMap((id) => {
    const what = used.get(id);
    return what
      ? [{ id, used: [...what].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, words]) => words) }]
      : [];
  });
}

/** What a source is used for where a setting was derived by it. */
const aSetting: Readonly<Record<SettingName, Said>> = {
  mode: say`setting: mode`,
  button: say`setting: button`,
  offDelay: say`setting: offDelay`,
  output: say`setting: output`,
  impulse: say`setting: impulse`,
  threshold: say`setting: threshold`,
  sensitivity: say`setting: sensitivity`,
  soundSensitivity: say`setting: soundSensitivity`,
  mask: say`setting: mask`,
  lock: say`setting: lock`,
  testMode: say`setting: testMode`,
  groupRole: say`setting: groupRole`,
};

/** The same where a test is done by it. */
const aTest: Readonly<Record<WorkStage, Said>> = {
  isolation: say`test: isolation`,
  inspection: say`test: inspection`,
  "dead-tests": say`test: dead-tests`,
  fitting: say`test: fitting`,
  "power-up": say`test: power-up`,
  "live-tests": say`test: live-tests`,
  functional: say`test: functional`,
  "walk-test": say`test: walk-test`,
  readings: say`test: readings`,
  emergency: say`test: emergency`,
};
