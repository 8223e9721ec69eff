import { type Problem, say } from "../../check/index.ts";
import {
  evaluateRules,
  longestDelayAllowed,
  openFacts,
  type RulePack,
  type RuleResult,
} from "../../rules/index.ts";
import { type SetDevice, type SettingContext, settingConflicts, settingsOf } from "../../settings/index.ts";
import {
  controlledRooms,
  lookUp,
  type Room,
  roomTitle,
  type Site,
  type SiteLookUp,
} from "../../site/index.ts";
import { type FoundInstallation, type WiringModel, wiringOfSite } from "../../wiring/index.ts";
import type { Finding } from "../findings.ts";
import { findingsOf, orderedFindings } from "../review-room.ts";
import type { SettingChoices } from "./choices.ts";
import { placeContext, type ReadThreshold, readThreshold } from "./device-context.ts";
import { deviceGroups } from "./device-groups.ts";
import { ruleFactsOf } from "./rule-facts.ts";
import { seenByTwo } from "./two-sight.ts";

/** A detector with its settings, what they rest on, and what its readings gave. */
export interface PlannedDevice extends SetDevice {
  readonly threshold?: ReadThreshold;
}

/** What the packs that are on say of a room. */
export interface RoomRules {
  readonly room: string;
  /** Name on paper. */
  readonly title: string;
  readonly results: readonly RuleResult[];
}

export interface SiteSettings {
  /** In the order of the site. */
  readonly devices: readonly PlannedDevice[];
  /** Rooms of which a rule speaks, in the order of the site. */
  readonly rooms: readonly RoomRules[];
  readonly findings: readonly Finding[];
}

const nothingFound: FoundInstallation = { boards: [], circuits: [] };

/**
 * Settings of every detector of a site, what the rules say of every room, and what contradicts itself.
 *
 * @param site - Snapshot of the job; any content. @param choices - What people chose, read and entered beside it, and the packs that are on.
 * @returns Devices with chosen and derived settings kept apart; rule results with their evidence; findings in reading order.
 * @source SETTING-CHOICE
 * @example A windowless changing room with one detector: automatic, 15 min, no threshold, each with its sentence
 */
export function settingsOfSite(site: Site, choices: SettingChoices = {}): SiteSettings {
  const look = lookUp(site);
  const packs = choices.packs ?? [];
  const wiring = wiringOfSite(site, choices.installation ?? nothingFound).model;
  const detectors = [...look.detectorById.values()];
  const groups = deviceGroups(site, {
    wiring,
    chosenRole: (id) => choices.chosen?.get(id)?.groupRole,
  });
  const switchingIn = (id: string): ReadonlySet<string> =>
    new Set(
      [...groups].flatMap(([device, group]) => {
        const role = choices.chosen?.get(device)?.groupRole ?? group.role;
        return group.id === id && role !== "slave" ? [device] : [];
      }),
    );
  const sights = new Map<string, boolean>();
  /** Worked out once for all devices of a load. */
  const seenByTwoIn =
    (group: string) =>
    (rooms: readonly Room[]): boolean => {
      const key = [group, ...rooms.map(({ id }) => id)].join(" ");
      const known = sights.get(key) ?? seenByTwo(look, { rooms, switching: switchingIn(group) });
      sights.set(key, known);
      return known;
    };
  const devices = detectors.map((detector): PlannedDevice => {
    const readings = choices.readings?.get(detector.id);
    const threshold = readings && readThreshold(roomTitle(look.roomById.get(detector.room)), readings);
    const group = groups.get(detector.id)!;
    const place = placeContext(look, detector, { read: threshold, seenByTwo: seenByTwoIn(group.id) });
    const [strictest] = controlledRooms(detector)
      .flatMap((id) => limitOf(look, id, { packs, choices }))
      .toSorted((a, b) => a.delay - b.delay);
    const timer = choices.timers?.get(detector.id);
    const recommended = choices.recommended?.get(detector.id);
    const context: SettingContext = {
      ...place,
      group,
      ...(timer && { stairTimer: timer }),
      ...(recommended && { recommendedDelay: recommended }),
      ...(strictest && { longestDelay: strictest }),
    };
    return {
      context,
      settings: settingsOf(context, choices.chosen?.get(detector.id)),
      ...(threshold && { threshold }),
    };
  });
  const rooms = packs.length === 0 ? [] : roomRules(look, { devices, packs, choices, wiring });
  const shown = new Set(packs.flatMap(delayRules));
  const problems: Problem[] = [
    ...settingConflicts(devices),
    ...devices.flatMap((device) => readingProblems(device)),
    // A delay above a rule is said at the device that has it.
    ...rooms.flatMap(({ results }) =>
      results.flatMap(({ pack, rule, problem }) =>
        problem?.code === "rule-not-met" && !shown.has(`${pack} ${rule}`) ? [problem] : [],
      ),
    ),
    ...openFacts(rooms),
  ];
  return { devices, rooms, findings: orderedFindings(site, findingsOf(problems)) };
}

const buildingOf = ({ day, plant }: SettingChoices): { readonly day?: string; readonly plant?: number } => ({
  ...(day === undefined ? {} : { day }),
  ...(plant === undefined ? {} : { plant }),
});

/** Rules on the off delay, by the codes of pack and rule. */
const delayRules = (pack: RulePack): readonly string[] =>
  pack.rules
    .filter(({ limit }) => limit.measure === "off-delay" && "most" in limit)
    .map(({ code }) => `${pack.code} ${code}`);

/** The strictest rule on the delay of a room; whether one applies hangs on the room alone. */
function limitOf(
  look: SiteLookUp,
  id: string,
  { packs, choices }: { readonly packs: readonly RulePack[]; readonly choices: SettingChoices },
): readonly NonNullable<SettingContext["longestDelay"]>[] {
  const room = look.roomById.get(id);
  if (!room || packs.length === 0) return [];
  const facts = ruleFactsOf(look, room, { devices: [], switched: new Map(), ...buildingOf(choices) });
  const allowed = longestDelayAllowed(packs, facts);
  if (!allowed) return [];
  const { delay, pack, rule } = allowed;
  return [{ delay, rule: say`${pack.title} ${pack.edition}, ${rule.clause}`, source: pack.source }];
}

/** Every room in which a detector switches; of the others only whether there has to be automatic control. */
function roomRules(
  look: SiteLookUp,
  known: {
    readonly devices: readonly PlannedDevice[];
    readonly packs: readonly RulePack[];
    readonly choices: SettingChoices;
    readonly wiring: WiringModel;
  },
): readonly RoomRules[] {
  const { devices, packs, choices, wiring } = known;
  const switched = new Map(wiring.loads.map(({ id, switchedLine }) => [id, switchedLine !== undefined]));
  const bare = packs.map((pack) => ({
    ...pack,
    rules: pack.rules.filter(({ limit }) => limit.measure === "automatic-control"),
  }));
  return [...look.roomById.values()].flatMap((room): readonly RoomRules[] => {
    const own = new Set(look.detectorsFor(room.id).map(({ id }) => id));
    const facts = ruleFactsOf(look, room, {
      devices: devices.filter(({ context }) => own.has(context.device)),
      switched,
      ...buildingOf(choices),
    });
    const results = evaluateRules(own.size > 0 ? packs : bare, facts);
    return results.length === 0 ? [] : [{ room: room.id, title: facts.title, results }];
  });
}

/** Why readings cannot carry a threshold, or how sure they are. */
function readingProblems({ context, threshold }: PlannedDevice): readonly Problem[] {
  if (!threshold) return [];
  const { device, place } = context;
  return ("problems" in threshold ? threshold.problems : threshold.notes).map((problem) => ({
    ...problem,
    records: [device],
    ...(place && { room: place.room, at: place.at }),
  }));
}
