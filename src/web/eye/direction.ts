import type { LensMask, Metres, Point, Radians } from "#engine";
import { wholeTurn } from "#engine";

/** Where the lens is: in the plan, above its floor, and how it is turned. */
export interface Eye {
  readonly at: Point;
  readonly height: Metres;
  readonly turn: Radians;
}

/** A direction as the lens sees it. */
export interface Direction {
  /** From the notch, counter-clockwise seen from above. */
  readonly azimuth: Radians;
  /** From straight down; π/2 at the horizon. */
  readonly offNadir: Radians;
}

export const horizon: Radians = Math.PI / 2;

/** The direction of a place at a height; what lies above the lens is taken to the horizon. */
export function directionOf(eye: Eye, [x, y]: Point, height: Metres): Direction {
  const [dx, dy] = [x - eye.at[0], y - eye.at[1]];
  return {
    azimuth: wholeTurn(Math.atan2(dy, dx) - eye.turn),
    offNadir: Math.min(horizon, Math.atan2(Math.hypot(dx, dy), eye.height - height)),
  };
}

/** A direction on a disc of radius 1, y down; turned as the plan is, so that right is right in both. */
export function onDisc({ turn }: Pick<Eye, "turn">, { azimuth, offNadir }: Direction): Point {
  const radius = offNadir / horizon;
  return [Math.cos(azimuth + turn) * radius, -Math.sin(azimuth + turn) * radius];
}

/** The direction of a place on the disc; outside its rim the horizon. */
export function offDisc({ turn }: Pick<Eye, "turn">, [x, y]: Point): Direction {
  return {
    azimuth: wholeTurn(Math.atan2(-y, x) - turn),
    offNadir: Math.min(1, Math.hypot(x, y)) * horizon,
  };
}

/** The mask between two directions: the short way round, from the nearer to the farther band. */
export function maskBetween(start: Direction, end: Direction): LensMask {
  const way = Math.atan2(Math.sin(end.azimuth - start.azimuth), Math.cos(end.azimuth - start.azimuth));
  const [from, to] = way < 0 ? [end.azimuth, start.azimuth] : [start.azimuth, end.azimuth];
  return {
    from,
    to,
    inner: Math.min(start.offNadir, end.offNadir),
    outer: Math.max(start.offNadir, end.offNadir),
  };
}

/** Whole degrees: nobody cuts a mask finer. */
export const roundedMask = (mask: LensMask): LensMask => ({
  from: wholeDegrees(mask.from),
  to: wholeDegrees(mask.to),
  inner: wholeDegrees(mask.inner),
  outer: wholeDegrees(mask.outer),
});

const wholeDegrees = (angle: Radians): Radians => (Math.round((angle * 180) / Math.PI) * Math.PI) / 180;

/** SVG path of a mask on the disc: a piece of a ring. */
export function maskPath(eye: Pick<Eye, "turn">, { from, to, inner, outer }: LensMask): string {
  const full = Math.abs(to - from) >= 2 * Math.PI - 1e-9;
  const span = full ? 2 * Math.PI : wholeTurn(to - from);
  const steps = Math.max(2, Math.ceil(span / (Math.PI / 60)));
  const arc = (offNadir: Radians) =>
    Array.from({ length: steps + 1 }, (_, index) =>
      onDisc(eye, { azimuth: from + (span * index) / steps, offNadir }),
    );
  const outward = arc(outer);
  const inward = arc(inner).reverse();
  return full
    ? `M${outward.map(place).join("L")}ZM${inward.map(place).join("L")}Z`
    : `M${[...outward, ...inward].map(place).join("L")}Z`;
}

export const place = ([x, y]: Point): string => `${x.toFixed(4)} ${y.toFixed(4)}`;
