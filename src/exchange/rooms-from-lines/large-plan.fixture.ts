import type { Linework } from "../linework/linework.ts";
import { box, pencil } from "./drawn-plan.fixture.ts";

/** Rooms are this far apart, middle to middle: 5 m × 4 m inside walls of 0.2 m. [m] */
const largePlanStep = [5.2, 4.2] as const;

/**
 * A plan of equal furnished rooms on one layer, each with a door into the next one in its row.
 *
 * @param columns - Rooms in a row. @param rows - Rows. @param desks - Desks with a chair in each room: nine lines and a round of sixteen each.
 */
export function largePlan(columns: number, rows: number, desks: number): Linework {
  const p = pencil();
  const [dx, dy] = largePlanStep;
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const [x, y] = [i * dx, j * dy];
      // Inner faces, open at the doors to both sides, with the jambs through the wall.
      p.line([x, y], [x + 5, y]);
      p.line([x + 5, y + 4], [x, y + 4]);
      p.line([x + 5, y], [x + 5, y + 1]);
      p.line([x + 5, y + 1.9], [x + 5, y + 4]);
      p.line([x, y + 4], [x, i === 0 ? y : y + 1.9]);
      if (i > 0) p.line([x, y + 1], [x, y]);
      p.line([x + 5, y + 1], [x + 5.2, y + 1]);
      p.line([x + 5, y + 1.9], [x + 5.2, y + 1.9]);
      p.door([x + 5, y + 1], [x + 5, y + 1.9], 1);
      p.text(`R${j + 1}.${i + 1}`, [x + 2.5, y + 2]);
      for (let k = 0; k < desks; k++) {
        const [u, v] = [x + 0.6 + (k % 4) * 0.9, y + 0.3 + Math.floor(k / 4) * 0.9];
        p.ring(box(u, v, 0.6, 0.4));
        p.ring(box(u + 0.1, v + 0.1, 0.3, 0.2));
        p.ring(
          Array.from({ length: 16 }, (_, n) => [
            u + 0.3 + 0.15 * Math.cos((n * Math.PI) / 8),
            v + 0.6 + 0.15 * Math.sin((n * Math.PI) / 8),
          ]),
        );
      }
    }
  const [w, h] = [columns * dx - 0.2, rows * dy - 0.2];
  p.ring(box(-0.2, -0.2, w + 0.4, h + 0.4));
  return p.linework({ arcs: "chords" });
}
