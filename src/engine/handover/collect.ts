import type { CareEntry } from "../care/index.ts";
import { type Check, joined, messageSaid, type Problem, say } from "../check/index.ts";
import { deviceZone } from "../coverage/index.ts";
import type { ZoneKind } from "../detector/index.ts";
import { areaOf, regionOf } from "../geometry/index.ts";
import {
  type Finding,
  findingsOf,
  orderedFindings,
  reviewSite,
  type SettingChoices,
  type SiteSettings,
  settingsOfSite,
} from "../review/index.ts";
import { lookUp, roomTitle, type Site } from "../site/index.ts";
import {
  countedEntries,
  type DeviceSwap,
  partedBySwaps,
  resultOfDevice,
  roomVerdict,
  type SamplingRule,
  type SetForTest,
  type SiteEntry,
  type StationReading,
  sampleStates,
  type WorkState,
  walkTest,
  workOrder,
  workState,
} from "../site-test/index.ts";
import {
  coveredWiring,
  type FoundInstallation,
  hasWiring,
  reviewWiring,
  wiringOfSite,
} from "../wiring/index.ts";
import { careRecord } from "./care-record.ts";
import { handedState } from "./handed-state.ts";
import type { Handover, RoomRecord, TestLine, WiringRecord, ZoneOfDevice } from "./handover.ts";
import { assumptionsOf, sourcesOf } from "./rests-on.ts";
import { type HandedRevision, revisionRecords } from "./revisions.ts";

export interface HandoverInput {
  readonly choices: SettingChoices;
  readonly found: FoundInstallation;
  /** What was done and found on site. */
  readonly entries: readonly CareEntry[];
  /** What was found at the stations of a room, by its id. */
  readonly readings: (room: string) => readonly StationReading[];
  /** What the reading of the job had to say. */
  readonly notes: readonly Problem[];
  /** What was handed over before, the earliest first. */
  readonly revisions?: readonly HandedRevision[];
  /** Detectors that were exchanged. */
  readonly swaps?: readonly DeviceSwap[];
  /** Day from which one looks ahead to visits; that of the last hand-over if absent. */
  readonly today?: string | undefined;
  /** Code by which only a sample is tested; all detectors if absent. */
  readonly sampling?: SamplingRule["id"] | undefined;
  /** Between periodic inspections. [a] */
  readonly inspectionYears?: number | undefined;
  readonly progress?: (step: { readonly done: number; readonly total: number }) => void;
}

/**
 * Everything that is handed over, collected into one record.
 *
 * @param site - Snapshot of the job; any content. @param input - What the job holds beside it.
 * @returns Rooms, zones, settings, wiring, tests, findings, and what all of it rests on.
 * @source COMMON-PRACTICE
 * @example A job without circuits: no wiring, with the reason in a sentence
 */
export function handoverOf(site: Site, input: HandoverInput): Handover {
  const { progress } = input;
  const review = reviewSite(site, progress ? { progress } : {});
  const settings = settingsOfSite(site, input.choices);
  const wiring = wiringRecord(site, input.found);
  const findings = orderedFindings(site, [
    ...findingsOf(input.notes),
    ...review.findings,
    ...findingsOf(wiring.kind === "built" ? wiring.review.problems : []),
    ...settings.findings,
  ]);
  const { swaps = [] } = input;
  const { standing, before } = partedBySwaps(input.entries, { swaps, detectors: site.detectors });
  const order = workOrder(site, wiringOfSite(site, input.found).model, { settings: setForTest(settings) });
  const checks: readonly Check[] = [
    ...review.rooms.flatMap((room) => room.checks),
    ...(wiring.kind === "built" ? wiringChecks(wiring) : []),
    ...settings.rooms.flatMap(({ results }) => results.flatMap(({ check }) => check)),
  ];
  return {
    site,
    rooms: roomRecords(site, { coverage: review.rooms, findings, readings: input.readings }),
    zones: zonesOf(site),
    settings,
    wiring,
    findings,
    checks,
    order,
    tests: testLines(order, standing),
    sample: sampleOf(site, { rule: input.sampling, state: workState(order, standing) }),
    swaps,
    care: careRecord(site, {
      handedOver: input.revisions?.[0]?.date,
      today: input.today ?? input.revisions?.at(-1)?.date ?? "",
      question: {
        settings: setForTest(settings),
        found: input.found,
        entries: standing,
        readings: input.readings,
      },
      entries: input.entries,
      years: input.inspectionYears,
    }),
    before: before.filter(({ step }) => order.steps.some(({ name }) => name === step)),
    ...revisionRecords(input.revisions ?? [], handedState(site, { settings, found: input.found })),
    assumptions: assumptionsOf({ checks, settings, wiring }),
    sources: sourcesOf({ checks, settings, order }),
  };
}

const wiringChecks = ({ review }: Extract<WiringRecord, { kind: "built" }>): readonly Check[] =>
  [...review.circuits, ...review.contacts, ...review.mountings].flatMap(({ checks }) => checks);

/** The wiring of the job, or why there is nothing to draw of it. */
function wiringRecord(site: Site, found: FoundInstallation): WiringRecord {
  const review = hasWiring(site, found) ? reviewWiring(site, found) : undefined;
  if (!review)
    return {
      kind: "none",
      reason: say`no circuit is on record, and no luminaire with its circuit or power.`,
    };
  const whole = wiringOfSite(site, found);
  const { model, problems } = coveredWiring(whole.model);
  const refused = joined(problems.map(messageSaid), " ");
  if (!model) return { kind: "none", reason: refused };
  if (model.switchedLines.length === 0)
    return { kind: "none", reason: say`nobody knows yet which luminaires a detector switches.` };
  return {
    kind: "built",
    found,
    built: { ...whole, model },
    review,
    refused: problems.length === 0 ? undefined : refused,
  };
}

const kinds: readonly ZoneKind[] = ["seated", "towards", "across", "sound"];

/** Zones of every detector as coverage counts them, doors closed. */
function zonesOf(site: Site): readonly ZoneOfDevice[] {
  return site.detectors.flatMap((detector) => {
    const model = site.models.find((one) => one.id === detector.model);
    return kinds
      .filter((kind) => (model?.zones[kind]?.length ?? 0) > 0)
      .map((kind) => ({
        device: detector.id,
        kind,
        region: deviceZone(site, { device: detector.id, kind, doors: "closed" }),
      }));
  });
}

function roomRecords(
  site: Site,
  of: {
    readonly coverage: readonly RoomRecord["coverage"][];
    readonly findings: readonly Finding[];
    readonly readings: HandoverInput["readings"];
  },
): readonly RoomRecord[] {
  const look = lookUp(site);
  return of.coverage.map((coverage): RoomRecord => {
    const room = look.roomById.get(coverage.room)!;
    const readings = of.readings(room.id);
    return {
      room,
      title: roomTitle(room),
      storey: site.storeys.find(({ id }) => id === room.storey)?.name ?? "",
      area: areaOf(regionOf(room.outline, room.holes)),
      detectors: look.detectorsFor(room.id).map(({ id }) => id),
      coverage,
      findings: of.findings.filter((finding) => finding.room === room.id),
      walked: readings.length === 0 ? undefined : roomVerdict(walkTest(site, room.id), readings),
    };
  });
}

function sampleOf(
  site: Site,
  { rule, state }: { readonly rule: SamplingRule["id"] | undefined; readonly state: WorkState },
): Handover["sample"] {
  if (rule === undefined) return undefined;
  return { rule, groups: sampleStates(site, { rule, resultOf: (device) => resultOfDevice(state, device) }) };
}

const setForTest = ({ devices }: SiteSettings): ReadonlyMap<string, SetForTest> =>
  new Map(
    devices.map(({ context, settings }) => [
      context.device,
      {
        offDelay: settings.offDelay.value,
        threshold: settings.threshold.value,
        ...(context.longestDelay ? { longestDelay: context.longestDelay.delay } : {}),
      },
    ]),
  );

/** Every step with where it stands and the entries that count for it, the latest of each part. */
function testLines(order: Handover["order"], entries: readonly SiteEntry[]): readonly TestLine[] {
  const state = workState(order, entries);
  const latest = new Map<string, Map<string, SiteEntry>>();
  for (const entry of countedEntries(entries)) {
    const key = `${entry.step}:${entry.about.kind}:${entry.about.id}`;
    const parts = latest.get(key) ?? new Map<string, SiteEntry>();
    parts.set(entry.part ?? "", entry);
    latest.set(key, parts);
  }
  return order.steps.map((step) => ({
    state: state.steps.get(step.id)!,
    entries: [...(latest.get(step.id)?.values() ?? [])],
  }));
}
