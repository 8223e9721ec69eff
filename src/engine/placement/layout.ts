import type { RoomCoverage } from "../coverage/index.ts";
import { coverageOf } from "../coverage/room-coverage.ts";
import { type Detector, roomTitle } from "../site/index.ts";
import { alignmentOf } from "./alignment.ts";
import { intoFrame, longestWall } from "./candidates.ts";
import type { Column } from "./columns.ts";
import type { Layout } from "./contract.ts";
import type { RoomTask } from "./task.ts";

/** A layout with the whole coverage of the room by it. */
export interface Judged {
  readonly layout: Layout;
  readonly coverage: RoomCoverage;
}

/**
 * A layout as records, judged by the coverage calculation that checks any plan.
 *
 * @param task - The room. @param options.columns - Its devices. @param options.leastMargin - Reach in hand at the demand's tightest place. [m]
 * @returns Detectors (pinned ones as they are), gaps, dark walks and traits.
 * @example Two devices in room 0.12: tags 0.12-1 and 0.12-2, from the longest wall's start
 */
export function judgedLayout(
  task: RoomTask,
  options: { readonly columns: readonly Column[]; readonly leastMargin: number },
): Judged {
  const { prepared } = task;
  const { look, room } = prepared;
  const frame = longestWall(room);
  const others = look.site.detectors.filter((detector) => detector.room !== room.id || detector.pinned);
  const known = { ids: new Set(others.map((one) => one.id)), tags: new Set(others.map((one) => one.tag)) };
  const byPlace = options.columns.toSorted((a, b) => {
    const [p, q] = [intoFrame(a.device.at, frame), intoFrame(b.device.at, frame)];
    return Math.abs(p[1] - q[1]) > 1e-6 ? p[1] - q[1] : p[0] - q[0];
  });
  /** Names that nobody has yet, one after the other. */
  const freeNames = (used: ReadonlySet<string>, prefix: string): (() => string) => {
    let number = 0;
    return () => {
      do number++;
      while (used.has(`${prefix}-${number}`));
      return `${prefix}-${number}`;
    };
  };
  const nextId = freeNames(known.ids, `${room.id}-device`);
  const nextTag = freeNames(known.tags, room.number.trim() || roomTitle(room));
  const devices = byPlace.map(
    ({ device, fixed }): Detector =>
      fixed ?? {
        id: nextId(),
        tag: nextTag(),
        room: room.id,
        controls: [room.id],
        group: "",
        model: device.model.id,
        at: device.at,
        height: device.height,
        turn: device.turn,
        masks: [],
        pinned: false,
      },
  );
  const coverage = coverageOf(prepared, devices);
  const own = devices.filter((device) => device.room === room.id);
  return {
    coverage,
    layout: {
      devices: own,
      cost: options.columns.reduce((sum, column) => sum + column.cost, 0),
      gaps: coverage.gaps,
      darkWalks: coverage.darkWalks,
      traits: {
        worstDarkWalk: Math.max(0, ...coverage.darkWalks.map((walk) => walk.metres)),
        spillArea: coverage.spill.reduce((sum, spill) => sum + spill.area, 0),
        leastMargin: options.leastMargin,
        alignment: alignmentOf(
          room,
          own.map((device) => device.at),
        ),
      },
    },
  };
}
