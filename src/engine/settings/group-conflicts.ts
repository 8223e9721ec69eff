import type { Problem } from "../check/index.ts";
import type { SetDevice } from "./device-settings.ts";

/** A time as it is read. @param seconds - Any. @returns [min] to a tenth. @example 90 s: 1.5 */
export const inMinutes = (seconds: number): number => Math.round((seconds / 60) * 10) / 10;

/**
 * What devices on one load contradict each other in.
 *
 * @param devices - Devices of one group, or of the whole job
 * @returns Findings group by group, in the order of their first device
 * @source SETTING-CHOICE
 * @example Two joined contacts with 1 and 10 min: the longest always wins
 */
export function groupConflicts(devices: readonly SetDevice[]): Problem[] {
  const groups = new Map<string, SetDevice[]>();
  for (const device of devices) {
    const { id } = device.context.group;
    groups.set(id, [...(groups.get(id) ?? []), device]);
  }
  return [...groups.values()].flatMap((members) => [...joinedConflicts(members), ...roleConflicts(members)]);
}

const inRole = (members: readonly SetDevice[], role: string): readonly SetDevice[] =>
  members.filter(({ settings }) => settings.groupRole.value === role);

/** A problem about several devices, at the first of them. */
function about(
  code: Problem["code"],
  devices: readonly SetDevice[],
  values: Problem["values"] = {},
): Problem {
  const { room, place } = devices[0]!.context;
  return {
    code,
    values: { tags: devices.map(({ context }) => context.tag).join(", "), room, ...values },
    records: devices.map(({ context }) => context.device),
    ...(place && { room: place.room, at: place.at }),
  };
}

function joinedConflicts(members: readonly SetDevice[]): Problem[] {
  const joined = inRole(members, "parallel");
  if (joined.length < 2) return [];
  const found: Problem[] = [];
  const delays = joined.map(({ settings }) => settings.offDelay.value);
  const [shortest, longest] = [Math.min(...delays), Math.max(...delays)];
  if (shortest !== longest)
    found.push(about("parallel-delays-differ", joined, { longest: inMinutes(longest) }));
  // Every contact decides by its own sensor, and each takes the others' lamps for daylight.
  if (joined.filter(({ settings }) => settings.threshold.value !== "off").length > 1)
    found.push(about("parallel-thresholds", joined));
  return found;
}

function roleConflicts(members: readonly SetDevice[]): Problem[] {
  const [masters, slaves] = [inRole(members, "master"), inRole(members, "slave")];
  const found: Problem[] = [];
  if (slaves.length === members.length) found.push(about("slaves-without-master", slaves));
  if (masters.length > 1) found.push(about("several-masters", masters));
  const alone = inRole(members, "alone");
  if (members.length > 1 && alone.length > 0) found.push(about("alone-on-shared-load", alone));
  return found;
}
