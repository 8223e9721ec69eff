import type { PathSteps } from "../page/flatten.ts";
import type { SvgElement } from "./element.ts";
import { lengthOf, numbersOf } from "./lengths.ts";

/** Turns path data into steps; "unreadable" counts as left out, with what was read before it kept. */
export type PathReader = (data: string) => { readonly steps: PathSteps; readonly sound: boolean };

/** What 100 % is across and up, and along both. [px] */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** Share of the radius at which the corners of a cubic stand that runs along a quarter circle. */
const roundness = (4 / 3) * (Math.SQRT2 - 1);

/** The steps of a shape in its own coordinates; undefined where it draws nothing. @source W3C-SVG2, chapters 9 and 10 */
export function stepsOf(
  element: SvgElement,
  viewport: Viewport,
  readPath: PathReader,
): { readonly steps: PathSteps; readonly sound: boolean } | undefined {
  const { attributes: a, name } = element;
  const across = (text: string | undefined) => lengthOf(text, { whole: viewport.width });
  const up = (text: string | undefined) => lengthOf(text, { whole: viewport.height });
  const along = (text: string | undefined) =>
    lengthOf(text, { whole: Math.hypot(viewport.width, viewport.height) / Math.SQRT2 });
  const sound = (steps: PathSteps) => ({ steps, sound: true });
  switch (name) {
    case "path":
      return a.d === undefined ? undefined : readPath(a.d);
    case "line":
      return sound([0, across(a.x1) ?? 0, up(a.y1) ?? 0, 1, across(a.x2) ?? 0, up(a.y2) ?? 0]);
    case "polyline":
    case "polygon": {
      const values = numbersOf(a.points);
      const steps: number[] = [];
      for (let i = 0; i + 1 < values.length; i += 2) steps.push(i === 0 ? 0 : 1, values[i]!, values[i + 1]!);
      if (name === "polygon") steps.push(4);
      return sound(steps);
    }
    case "rect": {
      const [width, height] = [across(a.width) ?? 0, up(a.height) ?? 0];
      if (!(width > 0 && height > 0)) return undefined;
      const [rx, ry] = [across(a.rx), up(a.ry)];
      return sound(
        roundedBox({
          x: across(a.x) ?? 0,
          y: up(a.y) ?? 0,
          width,
          height,
          rx: Math.min(Math.max(0, rx ?? ry ?? 0), width / 2),
          ry: Math.min(Math.max(0, ry ?? rx ?? 0), height / 2),
        }),
      );
    }
    case "circle":
    case "ellipse": {
      const rx = name === "circle" ? along(a.r) : (across(a.rx) ?? up(a.ry));
      const ry = name === "circle" ? rx : (up(a.ry) ?? across(a.rx));
      if (rx === undefined || ry === undefined || !(rx > 0 && ry > 0)) return undefined;
      const [x, y] = [across(a.cx) ?? 0, up(a.cy) ?? 0];
      return sound(roundedBox({ x: x - rx, y: y - ry, width: 2 * rx, height: 2 * ry, rx, ry }));
    }
    default:
      return undefined;
  }
}

interface RoundedBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly rx: number;
  readonly ry: number;
}

const roundedBox = ({ x, y, width, height, rx, ry }: RoundedBox): PathSteps => {
  const [right, bottom] = [x + width, y + height];
  if (rx === 0 || ry === 0) return [0, x, y, 1, right, y, 1, right, bottom, 1, x, bottom, 4];
  const [kx, ky] = [rx * (1 - roundness), ry * (1 - roundness)];
  return [
    ...[0, x + rx, y, 1, right - rx, y, 2, right - kx, y, right, y + ky, right, y + ry],
    ...[1, right, bottom - ry, 2, right, bottom - ky, right - kx, bottom, right - rx, bottom],
    ...[1, x + rx, bottom, 2, x + kx, bottom, x, bottom - ky, x, bottom - ry],
    ...[1, x, y + ry, 2, x, y + ky, x + kx, y, x + rx, y, 4],
  ];
};

/** The reader of path data, loaded when the first drawing is read. */
export async function loadPathReader(): Promise<PathReader> {
  const { default: svgpath } = await import("svgpath");
  return (data) => {
    const path = svgpath(data) as ReturnType<typeof svgpath> & { readonly err?: string };
    const steps: number[] = [];
    path
      .abs()
      .unshort()
      .unarc()
      .iterate((segment, _, x, y) => {
        const [kind, ...values] = segment as readonly [string, ...number[]];
        if (kind === "M") steps.push(0, ...values);
        else if (kind === "L") steps.push(1, ...values);
        else if (kind === "H") steps.push(1, values[0]!, y);
        else if (kind === "V") steps.push(1, x, values[0]!);
        else if (kind === "C") steps.push(2, ...values);
        else if (kind === "Q") steps.push(3, ...values);
        else if (kind === "Z" || kind === "z") steps.push(4);
      });
    return { steps, sound: !path.err };
  };
}
