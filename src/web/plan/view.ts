import type { Metres, Point } from "#engine";

/** A place on the screen, in CSS pixels from the left top of the plan. Kept apart from plan metres by its name. */
export interface Pixel {
  readonly px: number;
  readonly py: number;
}

/** What part of the plan is on the screen. y points up in the plan, down on the screen. */
export interface View {
  /** Pixels for one metre. */
  readonly scale: number;
  /** Plan point at the middle of the screen. */
  readonly x: Metres;
  readonly y: Metres;
  readonly width: number;
  readonly height: number;
}

export interface Bounds {
  readonly left: Metres;
  readonly right: Metres;
  readonly bottom: Metres;
  readonly top: Metres;
}

/** Pixels at the edges that are covered by bars and cards. */
export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A site of a kilometre and a half still fits on a phone. */
const leastScale = 0.25;
const mostScale = 1200;

export const toPixel = (view: View, point: Point): Pixel => ({
  px: view.width / 2 + (point[0] - view.x) * view.scale,
  py: view.height / 2 - (point[1] - view.y) * view.scale,
});

export const toPoint = (view: View, pixel: Pixel): Point => [
  view.x + (pixel.px - view.width / 2) / view.scale,
  view.y - (pixel.py - view.height / 2) / view.scale,
];

/** Zooms so that the plan point under the pixel stays under it. */
export function zoomed(view: View, at: Pixel, factor: number): View {
  const scale = Math.min(mostScale, Math.max(leastScale, view.scale * factor));
  const [x, y] = toPoint(view, at);
  return {
    ...view,
    scale,
    x: x - (at.px - view.width / 2) / scale,
    y: y + (at.py - view.height / 2) / scale,
  };
}

/** Moves the plan by so many pixels to the right and down. */
export const panned = (view: View, right: number, down: number): View => ({
  ...view,
  x: view.x - right / view.scale,
  y: view.y + down / view.scale,
});

/** The view that shows all of the bounds between the insets. */
export function fitted(view: View, bounds: Bounds, insets: Insets): View {
  const wide = Math.max(40, view.width - insets.left - insets.right);
  const high = Math.max(40, view.height - insets.top - insets.bottom);
  const scale = Math.min(
    mostScale,
    Math.max(
      leastScale,
      Math.min(
        wide / Math.max(0.5, bounds.right - bounds.left),
        high / Math.max(0.5, bounds.top - bounds.bottom),
      ),
    ),
  );
  const middle = { px: insets.left + wide / 2, py: insets.top + high / 2 };
  return {
    ...view,
    scale,
    x: (bounds.left + bounds.right) / 2 - (middle.px - view.width / 2) / scale,
    y: (bounds.bottom + bounds.top) / 2 + (middle.py - view.height / 2) / scale,
  };
}

export function boundsOf(points: Iterable<Point>): Bounds | undefined {
  let left = Infinity;
  let right = -Infinity;
  let bottom = Infinity;
  let top = -Infinity;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return left <= right ? { left, right, bottom, top } : undefined;
}

/** Lengths that a scale bar may have: 1, 2, 5 and their tenfolds. @returns The longest that fits. [m] */
export function barLength(view: View, pixels: number): Metres {
  const most = pixels / view.scale;
  const power = 10 ** Math.floor(Math.log10(most));
  return power * (most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1);
}
