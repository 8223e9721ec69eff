import { identity, type Matrix, product } from "../page/matrix.ts";
import { numbersOf } from "./lengths.ts";

/** The matrix of a transform attribute. What cannot be read ends it, as everything before it still holds. */
export function transformOf(text: string | undefined): Matrix {
  let matrix = identity;
  for (const [, name, body] of (text ?? "").matchAll(/([a-zA-Z]+)\s*\(([^)]*)\)/g)) {
    const step = stepOf(name!, numbersOf(body));
    if (!step) break;
    matrix = product(matrix, step);
  }
  return matrix;
}

const stepOf = (name: string, v: readonly number[]): Matrix | undefined => {
  const [a, b, c] = v;
  if (a === undefined || !v.every(Number.isFinite)) return undefined;
  switch (name) {
    case "matrix":
      return v.length === 6 ? (v as unknown as Matrix) : undefined;
    case "translate":
      return [1, 0, 0, 1, a, b ?? 0];
    case "scale":
      return [a, 0, 0, b ?? a, 0, 0];
    case "rotate": {
      const angle = (a * Math.PI) / 180;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const [x, y] = [b ?? 0, c ?? 0];
      return [cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y];
    }
    case "skewX":
      return [1, 0, Math.tan((a * Math.PI) / 180), 1, 0, 0];
    case "skewY":
      return [1, Math.tan((a * Math.PI) / 180), 0, 1, 0, 0];
    default:
      return undefined;
  }
};
