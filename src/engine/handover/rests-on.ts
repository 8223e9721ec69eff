import { type Check, english, type Words } from "../check/index.ts";
import type { SiteSettings } from "../review/index.ts";
import type { WorkOrder } from "../site-test/index.ts";
import { type SourceId, sources } from "../source/index.ts";
import type { Handover, SourceUse, WiringRecord } from "./handover.ts";

/** What was taken for granted in checks, settings and wiring: each sentence once, the most frequent first. */
export function assumptionsOf(of: {
  readonly checks: readonly Check[];
  readonly settings: SiteSettings;
  readonly wiring: WiringRecord;
}): Handover["assumptions"] {
  const all = new Map<string, { readonly text: Words; readonly times: number }>();
  const count = (text: Words, by = 1): void => {
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
  const used = new Map<SourceId, Set<string>>();
  const use = (id: SourceId, what: string): void => {
    used.set(id, (used.get(id) ?? new Set()).add(what));
  };
  for (const { source, what } of of.checks) use(source, english(what));
  for (const { settings } of of.settings.devices)
    for (const [name, setting] of Object.entries(settings))
      if (setting.kind === "derived") use(setting.source, `setting: ${name}`);
  for (const { source, stage } of of.order.steps) use(source, `test: ${stage}`);
  return (Object.keys(sources) as readonly SourceId[]).flatMap((id) => {
    const what = used.get(id);
    return what ? [{ id, used: [...what].toSorted() }] : [];
  });
}
