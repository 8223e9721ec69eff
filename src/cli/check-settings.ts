import {
  english,
  findingsOf,
  type PackStanding,
  type PlannedDevice,
  type Problem,
  type RulePack,
  roomTitle,
  type Setting,
  type SettingName,
  type SettingValues,
  type Site,
  type SiteSettings,
  settingsOfSite,
  shippedPacks,
} from "#engine";
import type { JobFile } from "#job";
import type { World } from "./command.ts";
import { readBytes } from "./files.ts";
import { aligned, rounded } from "./words.ts";

/** Settings of a job with the packs that they were judged by. */
export interface CheckedSettings {
  readonly settings: SiteSettings;
  readonly packs: readonly PackStanding[];
}

/**
 * Settings of every device of a job, and what the rules say.
 *
 * @param world - Where files are. @param job - The job. @param rules - Codes of shipped packs, or files of a firm's own; they are on.
 */
export async function checkSettings(
  world: World,
  { job, site }: { readonly job: JobFile; readonly site: Site },
  rules: readonly string[],
): Promise<CheckedSettings | { readonly problems: readonly Problem[] }> {
  const shipped = shippedPacks.map(({ code }) => code);
  const files: string[] = [];
  const problems: Problem[] = [];
  for (const word of rules.filter((code) => !shipped.includes(code))) {
    const read = await readBytes(world.folder, word);
    if ("problem" in read)
      problems.push({ code: "rule-pack-unknown", values: { word, codes: shipped.join(", ") } });
    else files.push(new TextDecoder().decode(read.bytes));
  }
  const kept = job.details.ownRules ?? [];
  const own = kept.length + files.length === 0 ? noPacks : await ownPacks(kept, files);
  problems.push(...own.refused);
  if (problems.length > 0) return { problems };
  const all = [...shippedPacks, ...own.packs];
  const { settingsOfJob } = await import("#job");
  const asked = [...rules, ...own.asked];
  const details = {
    ...job.details,
    rulesOn: [...(job.details.rulesOn ?? []), ...asked],
    rulesOff: (job.details.rulesOff ?? []).filter((code) => !asked.includes(code)),
  };
  const { choices, packs } = settingsOfJob({ ...job, details }, all);
  const settings = settingsOfSite(site, choices);
  return { settings: { ...settings, findings: [...findingsOf(own.unread), ...settings.findings] }, packs };
}

interface OwnPacks {
  readonly packs: readonly RulePack[];
  /** Codes of those that the command names. */
  readonly asked: readonly string[];
  /** Of those that the command names. */
  readonly refused: readonly Problem[];
  /** Of those that the job keeps: a finding, since the rest of the job can be checked. */
  readonly unread: readonly Problem[];
}

const noPacks: OwnPacks = { packs: [], asked: [], refused: [], unread: [] };

async function ownPacks(kept: readonly string[], files: readonly string[]): Promise<OwnPacks> {
  const { readRulePacks } = await import("#exchange");
  const shipped = shippedPacks.map(({ code }) => code);
  const named = readRulePacks(files, shipped);
  const asked = named.packs.map(({ code }) => code);
  const fromJob = readRulePacks(
    kept.filter((text) => !files.includes(text)),
    [...shipped, ...asked],
  );
  return {
    packs: [...named.packs, ...fromJob.packs],
    asked,
    refused: named.problems,
    unread: fromJob.problems,
  };
}

/** Every setting with its value, and whether a person chose it or why it was derived. */
export const settingsJson = ({ settings, packs }: CheckedSettings): object => ({
  settings: settings.devices.map(({ context, settings: own, threshold }) => ({
    device: context.device,
    tag: context.tag,
    room: context.place?.room ?? null,
    group: context.group.id,
    settings: own,
    ...(threshold && !("problems" in threshold)
      ? {
          fromReadings: {
            on: rounded(threshold.on),
            off: threshold.off === undefined ? null : rounded(threshold.off),
          },
        }
      : {}),
  })),
  rulePacks: packs.map(({ pack, on, why }) => ({ code: pack.code, title: pack.title, on, why })),
  rules: settings.rooms.flatMap(({ room, results }) =>
    results.map(({ pack, rule, check }) => ({ room, pack, rule, ...check })),
  ),
});

const shown: readonly (readonly [head: string, name: SettingName])[] = [
  ["Mode", "mode"],
  ["Button", "button"],
  ["Off delay", "offDelay"],
  ["Output", "output"],
  ["Threshold", "threshold"],
  ["Sensitivity", "sensitivity"],
  ["Sound", "soundSensitivity"],
  ["Role", "groupRole"],
];

/** What to set on each device, room by room, and how each pack of rules came out. */
export function settingsText({ settings, packs }: CheckedSettings, site: Site): string {
  if (settings.devices.length === 0) return "";
  const order = new Map(site.rooms.map((room, index) => [room.id, index]));
  const placed = ({ context }: PlannedDevice): number => order.get(context.place?.room ?? "") ?? order.size;
  const rows = settings.devices
    .toSorted((a, b) => placed(a) - placed(b))
    .map(({ context, settings: own }) => [
      roomTitle(site.rooms.find(({ id }) => id === context.place?.room)),
      context.tag,
      ...shown.map(([, name]) => cell(name, own[name])),
    ]);
  const table = aligned(["Settings", "Device", ...shown.map(([head]) => head)], rows, new Set([4]));
  return [
    table,
    "* chosen; everything else is derived, with its reason in --json",
    "",
    rulesText(settings, packs),
  ].join("\n");
}

const cell = (name: SettingName, setting: Setting<SettingValues[SettingName]>): string =>
  `${valueText(name, setting.value)}${setting.kind === "chosen" ? "*" : ""}`;

function valueText(name: SettingName, value: SettingValues[SettingName]): string {
  if (typeof value !== "number")
    return typeof value === "string"
      ? value
      : "background" in value
        ? `two-level ${rounded(value.background * 100, 0)} %`
        : `${value.pulse} s / ${value.pause} s`;
  if (name === "threshold") return `${Math.round(value)} lx`;
  return value >= 60 ? `${rounded(value / 60, 1)} min` : `${rounded(value, 1)} s`;
}

function rulesText(settings: SiteSettings, packs: readonly PackStanding[]): string {
  const on = packs.filter((standing) => standing.on);
  if (on.length === 0) return "No pack of rules is on; --rules CODE switches one on.";
  const checks = settings.rooms.flatMap(({ results }) => results);
  return aligned(
    ["Rules", "Pass", "Fail", "Not proven"],
    on.map(({ pack }) => [
      `${english(pack.title)} (${pack.code})`,
      ...(["pass", "fail", "not-proven"] as const).map((verdict) =>
        String(checks.filter((one) => one.pack === pack.code && one.check.verdict === verdict).length),
      ),
    ]),
    new Set([1, 2, 3]),
  );
}
