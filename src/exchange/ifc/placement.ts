import { type IfcModel, numbersOf, refOf } from "./model.ts";

/** A right-handed frame in the file's world: origin [m] and three unit axes. */
export interface Frame {
  readonly origin: Vector;
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
}

export type Vector = readonly [number, number, number];

export const worldFrame: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** Frames of the placements of one file in the world; each is worked out once. */
export interface Frames {
  /** Frame of an IfcObjectPlacement by its instance name, through all of its parents; undefined: the world itself. */
  of(placement: number | undefined): Frame;
}

/**
 * Look-up of the frames of a file.
 *
 * @param metres - Metres in one unit of the file.
 * @source ISO-16739, IfcLocalPlacement
 */
export function framesIn(model: IfcModel, metres: number): Frames {
  const known = new Map<number, Frame>();
  const of = (placement: number | undefined, depth: number): Frame => {
    if (placement === undefined || depth > deepest || model.type(placement) !== "IFCLOCALPLACEMENT")
      return worldFrame;
    const before = known.get(placement);
    if (before) return before;
    const values = model.values(placement);
    const frame = within(of(refOf(values[0]), depth + 1), axisFrame(model, refOf(values[1]), metres));
    known.set(placement, frame);
    return frame;
  };
  return { of: (placement) => of(placement, 1) };
}

/** Placements nest about six deep: site, building, storey, wall, opening, door. Beyond this the outer ones are passed over. */
const deepest = 64;

const axisFrame = (model: IfcModel, id: number | undefined, metres: number): Frame => {
  if (id === undefined) return worldFrame;
  const [location, axis, direction] = model.values(id);
  const flat = model.type(id) === "IFCAXIS2PLACEMENT2D";
  const origin = scaled(vector(model, refOf(location), [0, 0, 0]), metres);
  const z = flat ? worldFrame.z : unit(vector(model, refOf(axis), [0, 0, 1]), [0, 0, 1]);
  const wanted = vector(model, refOf(flat ? axis : direction), [1, 0, 0]);
  const along = dot(wanted, z);
  const fallback: Vector = Math.abs(z[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const flatX = unit(
    [wanted[0] - along * z[0], wanted[1] - along * z[1], wanted[2] - along * z[2]],
    fallback,
  );
  return { origin, x: flatX, y: cross(z, flatX), z };
};

const within = (outer: Frame, inner: Frame): Frame => {
  const turn = (v: Vector): Vector => [
    outer.x[0] * v[0] + outer.y[0] * v[1] + outer.z[0] * v[2],
    outer.x[1] * v[0] + outer.y[1] * v[1] + outer.z[1] * v[2],
    outer.x[2] * v[0] + outer.y[2] * v[1] + outer.z[2] * v[2],
  ];
  const shift = turn(inner.origin);
  return {
    origin: [outer.origin[0] + shift[0], outer.origin[1] + shift[1], outer.origin[2] + shift[2]],
    x: turn(inner.x),
    y: turn(inner.y),
    z: turn(inner.z),
  };
};

const vector = (model: IfcModel, id: number | undefined, otherwise: Vector): Vector => {
  if (id === undefined) return otherwise;
  const numbers = numbersOf(model.values(id)[0]);
  return numbers.length < 2 ? otherwise : [numbers[0]!, numbers[1]!, numbers[2] ?? 0];
};

const scaled = (v: Vector, by: number): Vector => [v[0] * by, v[1] * by, v[2] * by];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (v: Vector, otherwise: Vector): Vector => {
  const length = Math.hypot(...v);
  return length > 1e-9 ? [v[0] / length, v[1] / length, v[2] / length] : otherwise;
};
