import type { Outline, Room, SquareMetres } from "#engine";

/** Floor area of a room, holes taken off. @returns [m²] */
export const squareMetresOf = ({ outline, holes }: Pick<Room, "outline" | "holes">): SquareMetres =>
  Math.abs(signed(outline)) - holes.reduce((sum, hole) => sum + Math.abs(signed(hole)), 0);

const signed = (ring: Outline): number =>
  ring.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = ring[(index + 1) % ring.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
