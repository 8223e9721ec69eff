import { walkInTheDark } from "../coverage/dark-walk.ts";
import { planningReach } from "../coverage/index.ts";
import { spillOf } from "../coverage/spill.ts";
import { watchersOf } from "../coverage/watchers.ts";
import { reachTowards } from "../detector/index.ts";
import type { Metres, SquareMetres } from "../quantity/index.ts";
import { floorHeight } from "../site/index.ts";
import { type Column, type Watch, watchOf } from "./columns.ts";
import type { DemandRow } from "./demand-rows.ts";
import type { RowsAtHand } from "./row-field.ts";
import type { RoomTask } from "./task.ts";

/** What one device gives to a layout; a layout is judged by putting these together. */
export interface Measure {
  readonly column: Column;
  readonly watch: Watch;
  /** Rows that the device sees. */
  readonly seen: Int32Array;
  /** For each of these the metres of reach left beyond it. [m] */
  readonly inHand: Float64Array;
  /** For each way through the room the distance after which this device's light is on; infinite if never. [m] */
  readonly lightAt: readonly Metres[];
  /** What it sees of other rooms and of outside. */
  readonly spill: () => SquareMetres;
}

/**
 * What a device at a place gives: reach in hand, ways lit, spill.
 *
 * @param task - The room. @param options - The device, what it watches where that is known, and the places that must be seen.
 * @returns The measure; spill is computed when first asked for.
 * @source DERIVED-HERE
 * @example A row 3 m away from a device that reaches 3.4 m: 0.4 m in hand
 */
export function measureOf(
  task: RoomTask,
  options: { readonly column: Column; readonly watch?: Watch; readonly at: RowsAtHand },
): Measure {
  const { column, at } = options;
  const watch = options.watch ?? watchOf(column, { scenes: task.scenes, purpose: "coverage" });
  const seen = Int32Array.from(
    at.near(column, watch).near.filter((row) => watch.covers(at.rows[row]!)),
  ).sort();
  let spill: SquareMetres | undefined;
  return {
    column,
    watch,
    seen,
    inHand: Float64Array.from(seen, (row) => inHandAt(task, { column, row: at.rows[row]! })),
    lightAt: lightOnWays(task, { column, watch }),
    spill: () => (spill ??= spillAt(task, column)),
  };
}

/**
 * Least reach that a layout keeps in hand: at each row the best of its devices, then the least of the rows.
 *
 * @param measures - The layout's devices. @param count - How many rows there are. @returns Metres; 0 where a row lies within the skin of a zone's edge. [m]
 * @source DERIVED-HERE
 * @example Two devices, every row at least 0.3 m inside the reach of one of them: 0.3 m
 */
export function leastInHand(measures: readonly Measure[], count: number): Metres {
  if (measures.length === 0 || count === 0) return 0;
  const best = new Float64Array(count);
  for (const { seen, inHand } of measures)
    for (let i = 0; i < seen.length; i++) best[seen[i]!] = Math.max(best[seen[i]!]!, inHand[i]!);
  return best.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY);
}

/** Whether every row is in sight of some device. @param measures - The layout's devices. @param count - How many rows there are. @returns True if so; one in the skin of an edge is left to places where it is not. */
export function seesAll(measures: readonly Measure[], count: number): boolean {
  const seen = new Uint8Array(count);
  let left = count;
  for (const measure of measures)
    for (const row of measure.seen) {
      if (seen[row] === 1) continue;
      seen[row] = 1;
      left--;
    }
  return left === 0;
}

/**
 * The longest way in the dark by a layout.
 *
 * @param task - The room. @param measures - The layout's devices.
 * @returns Over all ways the distance before the first light, no more than the way is long. [m]
 * @source DIRECTION-ELLIPSE
 * @example Two doors lit after 1.9 m and 2.3 m: 2.3 m
 */
export function worstDark(task: RoomTask, measures: readonly Measure[]): Metres {
  let worst = 0;
  let index = 0;
  for (const { ways } of task.prepared.ways())
    for (const { way } of ways) {
      let dark = way.length;
      for (const measure of measures) dark = Math.min(dark, measure.lightAt[index]!);
      worst = Math.max(worst, dark);
      index++;
    }
  return worst;
}

function inHandAt(
  task: RoomTask,
  { column, row }: { readonly column: Column; readonly row: DemandRow },
): Metres {
  const { look, room } = task.prepared;
  const { device } = column;
  const pieces = look.floorPiecesOf(room.id);
  const { shape } = planningReach(look.site.defaults, {
    device,
    kind: row.kind === "walk" ? "towards" : "seated",
    height: floorHeight(pieces, device.at) + device.height - floorHeight(pieces, row.at),
    sight: row.sightHeight,
    purpose: "coverage",
    temperature: room.highestTemperature ?? 22,
  });
  const [dx, dy] = [row.at[0] - device.at[0], row.at[1] - device.at[1]];
  // Heard, but beyond the reach of sight: nothing in hand.
  return Math.max(0, reachTowards(shape, Math.atan2(dy, dx) - device.turn) - Math.hypot(dx, dy));
}

function lightOnWays(
  task: RoomTask,
  { column, watch }: { readonly column: Column; readonly watch: Watch },
): Metres[] {
  const { look, room } = task.prepared;
  const device = { ...column.device, id: "tried", room: column.fixed?.room ?? room.id };
  const sight = look.site.defaults.sightHeights.walking;
  return task.prepared.ways().flatMap(({ entrance, ways }) => {
    const doors = entrance.opening.kind === "door" ? entrance.opening.id : "closed";
    const watchers = watchersOf({
      look,
      room,
      devices: [device],
      zoneOf: (_, kind) => watch.zone({ kind, sightHeight: sight, doors }),
    });
    return ways.map(({ way }) => walkInTheDark(way, { watchers, speed: look.site.defaults.speed }).lightAt);
  });
}

function spillAt(task: RoomTask, { device, fixed }: Column): SquareMetres {
  const { room } = task.prepared;
  if (fixed !== undefined && fixed.room !== room.id) return 0;
  const record = fixed ?? {
    id: "tried",
    tag: "",
    room: room.id,
    controls: [room.id],
    group: "",
    model: device.model.id,
    at: device.at,
    height: device.height,
    turn: device.turn,
    masks: [],
    pinned: false,
  };
  return spillOf(task.prepared, [record]).reduce((sum, { area }) => sum + area, 0);
}
