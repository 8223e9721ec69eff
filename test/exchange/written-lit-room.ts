import { entity, insert, line, textOf } from "./written-dxf.ts";

/** A rectangle of four lines. [mm] */
const box = (left: number, bottom: number, right: number, top: number, layer: string) => [
  ...line(left, bottom, right, bottom, layer),
  ...line(right, bottom, right, top, layer),
  ...line(right, top, left, top, layer),
  ...line(left, top, left, bottom, layer),
];

/**
 * A room of 6 m × 4 m in millimetres, in walls of 0.2 m: two luminaires of 1.2 m × 0.3 m in it, one on top of another, one
 * outside, and four chairs.
 */
export const writtenLitRoom = (): string =>
  textOf({
    header: [
      [9, "$INSUNITS"],
      [70, 4],
    ],
    blocks: [
      { name: "Lamp", entities: box(-600, -150, 600, 150, "0") },
      { name: "Chair", entities: box(0, 0, 450, 450, "0") },
    ],
    entities: [
      ...box(0, 0, 6000, 4000, "Walls"),
      ...box(-200, -200, 6200, 4200, "Walls"),
      ...insert("Lamp", 2000, 2000),
      ...insert("Lamp", 4000, 2000, [50, 90]),
      ...insert("LAMP", 4000, 2000, [50, 90]),
      ...insert("Lamp", 9000, 2000),
      ...[1, 2, 3, 4].flatMap((number) => insert("Chair", 1000 * number, 500)),
      ...entity("TEXT", "Names", [10, 2600], [20, 3000], [40, 200], [1, "Workshop"]),
    ],
  });
