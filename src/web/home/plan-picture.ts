import type { Point } from "#engine";
import type { JobFile } from "#job";
import type { PlanPicture } from "../contract.ts";

/** Size of the picture, in its own units; the screen shows it about as large in pixels. */
const size = { width: 120, height: 80, margin: 5 } as const;
/** More outlines than this cannot be told apart at this size. */
const mostRooms = 600;

/**
 * A small picture of a job's plan: the storey with the most floor, its rooms, doors and detectors, fitted into a fixed frame.
 *
 * @returns Undefined for a job without rooms.
 */
export function planPicture(job: Pick<JobFile, "rooms" | "openings" | "detectors">): PlanPicture | undefined {
  const floors = new Map<string, number>();
  for (const { storey, outline } of job.rooms)
    floors.set(storey, (floors.get(storey) ?? 0) + Math.abs(signedArea(outline)));
  const storey = [...floors].sort(([, a], [, b]) => b - a)[0]?.[0];
  const rooms = job.rooms.filter((room) => room.storey === storey).slice(0, mostRooms);
  const corners = rooms.flatMap(({ outline }) => outline);
  if (corners.length === 0) return undefined;
  const span = (axis: 0 | 1): readonly [number, number] =>
    corners.reduce(
      ([least, most], point) => [Math.min(least, point[axis]), Math.max(most, point[axis])] as const,
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as const,
    );
  const [[left, right], [low, high]] = [span(0), span(1)];
  const scale = Math.min(
    (size.width - 2 * size.margin) / Math.max(right - left, 1e-6),
    (size.height - 2 * size.margin) / Math.max(high - low, 1e-6),
  );
  // Upwards on the plan is upwards in the picture, whose own y runs down.
  const at = ([x, y]: Point): readonly [number, number] => [
    tenth(size.width / 2 + (x - (left + right) / 2) * scale),
    tenth(size.height / 2 - (y - (low + high) / 2) * scale),
  ];
  const ids = new Set(rooms.map(({ id }) => id));
  return {
    width: size.width,
    height: size.height,
    rooms: rooms
      .map(({ outline, holes }) =>
        [outline, ...holes].map((ring) => `M${ring.map((p) => at(p).join(" ")).join("L")}Z`).join(""),
      )
      .join(""),
    doors: job.openings
      .filter((opening) => opening.rooms.some((id) => id !== null && ids.has(id)))
      .map(({ from, to }) => `M${at(from).join(" ")}L${at(to).join(" ")}`)
      .join(""),
    devices: job.detectors.filter(({ room }) => ids.has(room)).map((device) => at(device.at)),
    count: job.rooms.length,
  };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

const signedArea = (outline: readonly Point[]): number =>
  outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
