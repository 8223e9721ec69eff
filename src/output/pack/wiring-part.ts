import { deriveWiring, type Handover, outputKindOf, say, type Words } from "#engine";
import type { Variant } from "../drawing/ink.ts";
import type { DrawnCable } from "../dxf/storey-dxf.ts";
import type { WiringPlan } from "../wiring/plan.ts";
import { wiringDrawings, wiringSchedules, wiringTables } from "../wiring/wiring-documents.ts";
import { wiringPlan } from "../wiring/wiring-plan.ts";
import type { BoundDocument } from "./bound-pack.ts";
import type { PaperDetails } from "./pack-input.ts";

/** Drawings and schedules of the wiring. */
export function wiringPart(input: {
  /** Of the whole job: a group is built as it is, however many storeys it spans. */
  readonly whole: Handover;
  /** Of what the pack is about. */
  readonly handover: Handover;
  readonly details: PaperDetails;
  readonly variant: Variant;
}): {
  readonly documents: readonly BoundDocument[];
  readonly tables: readonly { readonly name: string; readonly content: string }[];
  readonly plan: WiringPlan | undefined;
  readonly cables: readonly DrawnCable[];
} {
  const { whole, handover, details, variant } = input;
  const { site, wiring, settings } = whole;
  if (wiring.kind === "none") return { documents: [], tables: [], plan: undefined, cables: [] };
  const derived = deriveWiring(site, wiring.found);
  const paired = new Set(
    settings.devices
      .filter((one) => outputKindOf(one.settings.output.value) !== "switch")
      .filter((one) => one.settings.output.value !== "addressed-bus")
      .map(({ context }) => context.device),
  );
  const all = wiringPlan(site, wiring.found, wiring.built, { derived, paired });
  const here = new Set([...handover.site.detectors, ...handover.site.luminaires].map(({ id }) => id));
  const plan = {
    ...all,
    groups: all.groups.filter(({ detectors, loads }) =>
      detectors.length > 0
        ? detectors.some(({ wired }) => here.has(wired.id))
        : // What main contacts feed has no detector of its own: it belongs where its luminaires hang.
          loads.length === 0 || loads.some(({ ids }) => ids.some((id) => here.has(id))),
    ),
  };
  const papers = {
    site: handover.site,
    plan,
    variant,
    title: (sheet: Words, storey: string | undefined) => ({
      ...details,
      storey: site.storeys.find(({ id }) => id === storey)?.name ?? "",
      sheet,
    }),
  };
  return {
    documents: [
      { name: "wiring", heading: say`Wiring`, sheets: wiringDrawings(papers) },
      { name: "wiring-schedules", heading: say`Wiring schedules`, sheets: wiringSchedules(papers) },
    ],
    tables: plan.groups.length === 0 ? [] : wiringTables({ ...papers, speak: details.speak }),
    plan,
    cables: derived.circuits.flatMap(({ route }) => route?.cables ?? []),
  };
}
