import { distanceToRings, type Outline, type Point } from "#engine";
import type { JobOpening } from "../schema/job-file.ts";

/**
 * The same hole in the wall, seen from its second room alone: `from` and `to` move through the wall onto that room's face.
 *
 * @param outline - Outline of the room that stays, to know on which side of the line the wall lies. [m]
 */
export function anchoredInSecond(opening: JobOpening, room: string, outline: Outline): JobOpening {
  const [from, to] = [opening.from, opening.to];
  const width = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const across: Point = [
    (-(to[1] - from[1]) / width) * opening.thickness,
    ((to[0] - from[0]) / width) * opening.thickness,
  ];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const left = distanceToRings([middle[0] + across[0], middle[1] + across[1]], [outline]);
  const right = distanceToRings([middle[0] - across[0], middle[1] - across[1]], [outline]);
  const sign = left <= right ? 1 : -1;
  const moved = ([x, y]: Point): [number, number] => [tidy(x + sign * across[0]), tidy(y + sign * across[1])];
  return {
    ...opening,
    rooms: [room, null],
    from: moved(from),
    to: moved(to),
    opensInto: opening.opensInto === room ? room : null,
  };
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;
