import { type DeviceLike, type Zone, zoneInScene } from "../coverage/index.ts";
import {
  type DetectorModel,
  longestReach,
  reachOf,
  reachTowards,
  type ZoneKind,
  type ZoneRow,
} from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import type { Detector } from "../site/index.ts";
import type { Ceiling } from "./ceiling.ts";
import type { DemandRow } from "./demand-rows.ts";
import type { Scenes, SightBook } from "./sight-book.ts";

/** A device that hangs, or that might. */
export interface Column {
  readonly device: DeviceLike;
  readonly cost: number;
  /** The record, for devices that stay where they are. */
  readonly fixed?: Detector;
}

/**
 * Columns for every place, model and turn that may be mounted there.
 *
 * @param ceiling - Ceiling of the room. @param options.points - Places. [m] @param options.models - Models that may be used.
 * @param options.base - Direction of the room's longest wall. [rad]
 * @returns One column for each; models outside their mounting limits at a place are left out.
 * @example 10 places, one round and one oblong model: 10 + 20 columns
 */
export function columnsOf(
  ceiling: Ceiling,
  options: {
    readonly points: readonly Point[];
    readonly models: readonly DetectorModel[];
    readonly base: Radians;
  },
): readonly Column[] {
  const turned = options.models.map((model) => ({ model, turns: turnsOf(model, options.base) }));
  return options.points.flatMap((at) => {
    const height = ceiling.heightAt(at);
    return turned
      .filter(({ model }) => fitsHeight(model, height))
      .flatMap(({ model, turns }) =>
        turns.map((turn): Column => ({ device: { model, at, height, turn, masks: [] }, cost: model.cost })),
      );
  });
}

/** Whether a model may hang at a height. @param model - The model. @param height - Above the local floor. [m] @returns True within its mounting limits. */
export const fitsHeight = (model: DetectorModel, height: Metres): boolean =>
  height >= model.mounting.min - 1e-4 && height <= model.mounting.max + 1e-4;

/**
 * Turns worth trying: one for a round model, two or four quarters from the longest wall for others, by the symmetry of their outlines.
 *
 * @param model - The model. @param base - Direction of the longest wall. [rad]
 * @returns Turns of the notch, counter-clockwise from +x. [rad]
 * @example A corridor-shaped model that looks the same both ways: base and base + 90°
 */
export function turnsOf(model: DetectorModel, base: Radians): readonly Radians[] {
  const rows = Object.values(model.zones).flat();
  if (rows.every((row) => "radius" in row)) return [0];
  const quarter = Math.PI / 2;
  if (rows.every((row) => looksTheSame(row, quarter))) return [base];
  if (rows.every((row) => looksTheSame(row, 2 * quarter))) return [base, base + quarter];
  return [0, 1, 2, 3].map((turns) => base + turns * quarter);
}

function looksTheSame(row: ZoneRow, turn: Radians): boolean {
  if ("radius" in row) return true;
  const shape = {
    kind: "outline" as const,
    corners: row.outline.map(([angle, radius]) => [angle, radius] as const),
  };
  const sorted = { ...shape, corners: shape.corners.toSorted((a, b) => a[0] - b[0]) };
  for (let degree = 0; degree < 360; degree += 3) {
    const angle = (degree * Math.PI) / 180;
    if (Math.abs(reachTowards(sorted, angle) - reachTowards(sorted, angle + turn)) > 1e-6) return false;
  }
  return true;
}

/** What a column covers, with its zones computed when first asked for. */
export interface Watch {
  readonly covers: (row: DemandRow) => boolean;
  /** Distance beyond which no such row is covered; below 0 where none is. [m] */
  readonly farthest: (row: DemandRow) => Metres;
  readonly zone: (question: {
    readonly kind: ZoneKind;
    readonly sightHeight: Metres;
    readonly doors: string;
  }) => Zone;
}

/**
 * What a column covers.
 *
 * @param column - The column. @param options.scenes - Scenes round the room. @param options.book - Looks shared with other columns.
 * @param options.purpose - "coverage" to find layouts, "outward" with eroded scenes for bounds.
 * @returns Tests and zones, remembered once computed.
 * @example A row under a round device within its reach, nothing between: covered
 */
export function watchOf(
  column: Column,
  options: {
    readonly scenes: Scenes;
    readonly purpose: "coverage" | "outward";
    /** Looks that columns at one place share; without it each asks for its own zones. */
    readonly book?: SightBook;
  },
): Watch {
  const { device } = column;
  const tests = new Map<string, RowTest>();
  const zones = new Map<string, Zone>();
  const zone: Watch["zone"] = ({ kind, sightHeight, doors }) => {
    const key = `${kind} ${sightHeight} ${doors}`;
    let known = zones.get(key);
    if (known === undefined) {
      known = zoneInScene(options.scenes(doors), { device, kind, sightHeight, purpose: options.purpose });
      zones.set(key, known);
    }
    return known;
  };
  const testOf = (kind: ZoneKind, row: DemandRow): RowTest => {
    const { sightHeight, doors } = row;
    const key = `${kind} ${sightHeight} ${doors}`;
    let known = tests.get(key);
    if (known === undefined) {
      // Declared reach plus a hand's breadth: nothing beyond it is ever covered, and no look need be worked out.
      const reach = model(device, kind)
        ? longestReach(reachOf(device.model, { kind, height: device.height, sightHeight }).shape) + 0.1
        : -1;
      let has: RowTest["has"] | undefined;
      known = {
        kind,
        sightHeight,
        doors,
        within: reach < 0 ? -1 : reach * reach,
        has: (x, y) => {
          has ??=
            (kind === "sound" ? undefined : options.book?.test(device, { kind, sightHeight, doors })) ??
            zone({ kind, sightHeight, doors }).has;
          return has(x, y);
        },
      };
      tests.set(key, known);
    }
    return known;
  };
  // Rows come in long runs of one kind: the test of the last one is at hand without looking it up.
  let last: RowTest | undefined;
  const within = (row: DemandRow, kind: ZoneKind): boolean => {
    if (
      last === undefined ||
      last.kind !== kind ||
      last.sightHeight !== row.sightHeight ||
      last.doors !== row.doors
    )
      last = testOf(kind, row);
    const [x, y] = row.at;
    const dx = x - device.at[0];
    const dy = y - device.at[1];
    return dx * dx + dy * dy <= last.within && last.has(x, y);
  };
  const seenAs = (row: DemandRow): ZoneKind => (row.kind === "walk" ? "towards" : "seated");
  return {
    covers: (row) => within(row, seenAs(row)) || (row.sound && within(row, "sound")),
    farthest: (row) => {
      const most = Math.max(testOf(seenAs(row), row).within, row.sound ? testOf("sound", row).within : -1);
      return most < 0 ? -1 : Math.sqrt(most);
    },
    zone,
  };
}

/** Test of rows of one kind, height and state of the doors. */
interface RowTest {
  readonly kind: ZoneKind;
  readonly sightHeight: Metres;
  readonly doors: string;
  /** Square of the distance beyond which nothing is covered; -1 where the model has no such zone. [m²] */
  readonly within: number;
  readonly has: (x: Metres, y: Metres) => boolean;
}

const model = ({ model }: DeviceLike, kind: ZoneKind): boolean => (model.zones[kind]?.length ?? 0) > 0;
