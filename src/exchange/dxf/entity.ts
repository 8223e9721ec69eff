import type { Matrix } from "../plan/page/matrix.ts";
import { planeOf } from "./extrusion.ts";
import type { DxfRecord } from "./record.ts";
import { lineText } from "./text-codes.ts";

/** What all entities have. */
export interface Entity {
  readonly layer: string;
  readonly onPaper: boolean;
  readonly hidden: boolean;
  /** Direction that the entity is drawn against. */
  readonly direction: readonly [number, number, number];
  /** From the plane that the entity is drawn on to the plan. */
  readonly plane: Matrix;
}

/** The common part of an entity. */
export function entityOf(record: DxfRecord): Entity {
  let layer = "0";
  let onPaper = false;
  let hidden = false;
  let elevation = 0;
  let [x, y, z] = [0, 0, 1];
  for (let i = 0; i < record.count; i++) {
    switch (record.code(i)) {
      case 8:
        layer = lineText(record.text(i)) || "0";
        break;
      case 67:
        onPaper = record.number(i) === 1;
        break;
      case 60:
        hidden = record.number(i) === 1;
        break;
      case 30:
      case 38:
        elevation = finite(record.number(i), 0);
        break;
      case 210:
        x = finite(record.number(i), 0);
        break;
      case 220:
        y = finite(record.number(i), 0);
        break;
      case 230:
        z = finite(record.number(i), 1);
        break;
    }
  }
  const direction = [x, y, z] as const;
  return { layer, onPaper, hidden, direction, plane: planeOf(direction, elevation) };
}

/** A number, or another where it is none. */
export const finite = (value: number, otherwise: number): number =>
  Number.isFinite(value) ? value : otherwise;

/** Degrees of the file in radians. */
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Numbers of the groups with these codes, the first of each; NaN where one is missing. */
export function numbersOf<const Codes extends readonly number[]>(
  record: DxfRecord,
  codes: Codes,
): { [K in keyof Codes]: number } {
  const values = codes.map(() => Number.NaN);
  const seen = codes.map(() => false);
  for (let i = 0; i < record.count; i++) {
    const k = codes.indexOf(record.code(i));
    if (k < 0 || seen[k]) continue;
    seen[k] = true;
    values[k] = record.number(i);
  }
  return values as { [K in keyof Codes]: number };
}
