import { type Load, roomTitle, type Site, say } from "#engine";
import type { Designations } from "./designations.ts";
import type { LoadGroup } from "./plan.ts";

/** Equal luminaires of a room together, in the order of the job. */
export function loadGroups(
  site: Site,
  loads: readonly Load[],
  about: {
    readonly names: Designations;
    /** Protective device of a circuit that is not the group's own. */
    readonly foreign: (circuit: string) => string | undefined;
  },
): readonly LoadGroup[] {
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const luminaires = new Map(site.luminaires.map((one) => [one.id, one]));
  const groups = new Map<string, Load[]>();
  for (const load of loads) {
    const { room, name, power, drivers, kind, emergency, circuit, line } = load;
    const key = JSON.stringify([room, name, power, drivers, kind, emergency?.taken, circuit, line]);
    groups.set(key, [...(groups.get(key) ?? []), load]);
  }
  return [...groups.values()].map((those): LoadGroup => {
    const load = those[0]!;
    const ids = those.map(({ id }) => id);
    return {
      ids,
      designation: about.names.ofAll(ids),
      count: those.reduce((sum, { count }) => sum + count, 0),
      name: luminaires.get(load.id)?.name.trim() || say`luminaire`,
      room: roomTitle(rooms.get(load.room ?? "")),
      kind: load.kind,
      power: load.power,
      drivers: load.drivers,
      emergency: load.emergency?.taken,
      line: load.line,
      foreign: about.foreign(load.circuit),
    };
  });
}
