import { expect } from "vitest";
import { type Line, linesIn, withoutPartner } from "../../../test/exchange/same-lines.ts";
import { type Group, type WrittenDrawing, written } from "../../../test/exchange/written-dxf.ts";
import type { Linework } from "../linework/linework.ts";
import { readDxf } from "./read-dxf.ts";
import type { DxfReport } from "./report.ts";

/** A drawing that must be readable. */
export const readBytes = (bytes: Uint8Array): { linework: Linework; report: DxfReport } => {
  const result = readDxf(bytes, { fileName: "drawn.dxf" });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result;
};
export const read = (drawing: WrittenDrawing) => readBytes(written(drawing));
/** Lines of a drawing that is nothing but its entities. */
export const drawn = (...entities: readonly (readonly Group[])[]) =>
  read({ entities: entities.flat() }).linework;

/** Decimal digits of the lines that follow from the files: doubles of coordinates near 10 hold fifteen. */
const off = 1e-9;
/** Expects these lines and no others, in any order and direction. */
export const expectLines = (linework: Linework, lines: readonly Line[]): void => {
  const found = linesIn(linework);
  expect(withoutPartner(lines, found, off)).toEqual([]);
  expect(withoutPartner(found, lines, off)).toEqual([]);
};

/** Corners of a rectangle as a polyline writes them. */
export const square: readonly Group[] = [
  [10, 0],
  [20, 0],
  [10, 4],
  [20, 0],
  [10, 4],
  [20, 3],
  [10, 0],
  [20, 3],
];
export const squareLines: readonly Line[] = [
  [0, 0, 4, 0],
  [4, 0, 4, 3],
  [4, 3, 0, 3],
  [0, 3, 0, 0],
];
