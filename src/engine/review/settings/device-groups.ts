import { type Said, say } from "../../check/index.ts";
import type { SettingContext, SettingValues } from "../../settings/index.ts";
import { controlledRooms, type Detector, type Site } from "../../site/index.ts";
import type { WiringModel } from "../../wiring/index.ts";

type Group = SettingContext["group"];
type Role = SettingValues["groupRole"];

const ASSUMED_JOINED = say`Which luminaires each switches is not entered: taken as joined, since they light the same room.`;

/**
 * Which detectors share a load, and the part of each.
 *
 * Outputs that the wiring joins share a load. Where the load of a detector is not on record, those that switch the same room are taken
 * as joined, and say so. A detector that only signals belongs to one that switches a room of its own. A master that somebody chose
 * makes slaves of the others.
 *
 * @param site - The site. @param known - Its wiring, and the roles that people chose by detector.
 * @returns By id of the detector.
 * @source SETTING-CHOICE
 * @example Two detectors over the same eight luminaires: both parallel
 */
export function deviceGroups(
  site: Site,
  known: {
    readonly wiring: Pick<WiringModel, "detectors">;
    readonly chosenRole: (detector: string) => Role | undefined;
  },
): ReadonlyMap<string, Group> {
  const lineOf = new Map(known.wiring.detectors.map(({ id, output }) => [id, output]));
  const groups = joinedDetectors(site.detectors, (id) => lineOf.get(id));
  return new Map(
    groups.flatMap((group) =>
      group.members.map((detector): [string, Group] => [
        detector.id,
        partIn(group, detector, known.chosenRole),
      ]),
    ),
  );
}

interface SharedLoad {
  readonly members: Detector[];
  /** True where joining was taken for granted. */
  assumed: boolean;
}

function joinedDetectors(
  detectors: readonly Detector[],
  lineOf: (id: string) => string | undefined,
): readonly SharedLoad[] {
  const groups: SharedLoad[] = [];
  const sharesRoom = (one: Detector, other: Detector): boolean => {
    const rooms = controlledRooms(one);
    return controlledRooms(other).some((room) => rooms.includes(room));
  };
  for (const detector of detectors.filter(switches)) {
    const line = lineOf(detector.id);
    const byLine =
      line === undefined
        ? []
        : groups.filter(({ members }) => members.some((one) => lineOf(one.id) === line));
    const byRoom = groups
      .filter(
        (group) =>
          !byLine.includes(group) &&
          group.members.some(
            (one) => (line === undefined || lineOf(one.id) === undefined) && sharesRoom(one, detector),
          ),
      )
      .slice(0, 1);
    const touching = [...byLine, ...byRoom];
    const merged: SharedLoad = {
      members: [...touching.flatMap(({ members }) => members), detector],
      assumed: byRoom.length > 0 || touching.some(({ assumed }) => assumed),
    };
    for (const group of touching) groups.splice(groups.indexOf(group), 1);
    groups.push(merged);
  }
  for (const slave of detectors.filter((one) => !switches(one))) {
    const label = slave.group.trim();
    const own =
      groups.find(({ members }) => label !== "" && members.some((one) => one.group.trim() === label)) ??
      groups.find(({ members }) => members.some((one) => sharesRoom(one, slave)));
    if (own) own.members.push(slave);
    else groups.push({ members: [slave], assumed: false });
  }
  return groups;
}

const switches = (detector: Detector): boolean => detector.output !== "signals";
const called = ({ tag, id }: Detector): string => tag || id;

function partIn(
  { members, assumed }: SharedLoad,
  detector: Detector,
  chosenRole: (detector: string) => Role | undefined,
): Group {
  const id = `load of ${members[0]!.id}`;
  const master = members.find((one) => one !== detector && chosenRole(one.id) === "master");
  const part = (role: Role, reason?: Said): Group => ({
    id,
    role,
    ...(reason === undefined ? {} : { reason }),
    ...(assumed && members.length > 1 ? { assumption: ASSUMED_JOINED } : {}),
  });
  if (!switches(detector))
    return part("slave", say`Its contact is not used: it only speaks to another detector.`);
  if (master) return part("slave", say`${called(master)} is the master of the group.`);
  const switching = members.filter((one) => switches(one) && chosenRole(one.id) !== "slave");
  if (members.length === 1) return part("alone");
  if (switching.every((one) => one === detector)) return part("master");
  const others = switching.filter((one) => one !== detector).map(called);
  return part(
    "parallel",
    say`Its contact is joined with that of ${others.join(", ")}; the longest delay wins.`,
  );
}
