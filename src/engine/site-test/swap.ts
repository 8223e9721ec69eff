import { controlledRooms, type Detector } from "../site/index.ts";
import { countedEntries, momentOf, type SiteEntry } from "./site-entry.ts";

/** A detector that was exchanged, as a job keeps it. */
export interface DeviceSwap {
  readonly id: string;
  /** ISO 8601, with its zone. */
  readonly time: string;
  readonly by?: string | undefined;
  readonly detector: string;
  /** Tag and titles of the models as they were then. */
  readonly tag: string;
  readonly from: string;
  readonly to: string;
  readonly reason: string;
  /** Of the new device. */
  readonly serial?: string | undefined;
}

/** Steps of a room that a swap opens again: its stations are judged by how the devices hang. */
const reopened: ReadonlySet<string> = new Set(["walk-test", "empty-room", "afterglow"]);

/**
 * What was recorded, parted by whether it still speaks of the devices that hang there now.
 *
 * An entry about a detector stands if it was made at or after the detector's last swap; the closing of a room's walk test likewise. Stations stand by their basis (VE-5),
 * circuits are what they were.
 *
 * @param entries - All entries. @param beside.swaps - All swaps. @param beside.detectors - Detectors of the job.
 * @returns Entries that stand, and counted ones of devices that are gone; nothing is lost between them but what was withdrawn.
 * @source COMMON-PRACTICE
 * @example A height measured before the swap of its detector: "before"
 */
export function partedBySwaps<Entry extends SiteEntry>(
  entries: readonly Entry[],
  beside: {
    readonly swaps: readonly Pick<DeviceSwap, "detector" | "time">[];
    readonly detectors: readonly Pick<Detector, "id" | "room" | "controls">[];
  },
): { readonly standing: readonly Entry[]; readonly before: readonly Entry[] } {
  if (beside.swaps.length === 0) return { standing: entries, before: [] };
  const device = new Map<string, number>();
  const room = new Map<string, number>();
  const later = (of: Map<string, number>, id: string, moment: number): void => {
    of.set(id, Math.max(moment, of.get(id) ?? Number.NEGATIVE_INFINITY));
  };
  for (const { detector, time } of beside.swaps) {
    later(device, detector, momentOf(time));
    const record = beside.detectors.find(({ id }) => id === detector);
    if (!record) continue;
    for (const id of controlledRooms(record)) later(room, id, momentOf(time));
  }
  const isBefore = ({ about, step, time }: Entry): boolean => {
    const since =
      about.kind === "detector"
        ? device.get(about.id)
        : about.kind === "room" && reopened.has(step)
          ? room.get(about.id)
          : undefined;
    return since !== undefined && momentOf(time) < since;
  };
  return {
    standing: entries.filter((entry) => !isBefore(entry)),
    before: countedEntries(entries).filter(isBefore),
  };
}
