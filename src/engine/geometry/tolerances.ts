import type { Metres } from "../quantity/index.ts";

/** Grain of stored results: booleans round to whole multiples of it. 10 µm is far below any dimension on site and keeps whole buildings inside exact integers. [m] */
export const GRAIN: Metres = 1e-5;

/** Two ends of edges nearer than this are one corner: several grains, still far below a drawn line. [m] */
export const SAME_POINT: Metres = 1e-7;

/** Deepest chord under a round edge of a zone: 2 mm is the skin within which zone and ray test may differ. [m] */
export const ARC_SAGITTA: Metres = 2e-3;

/** Width of what a strict final check may leave uncovered: a disc of 5 mm. [m] */
export const COVER_SKIN: Metres = 5e-3;

/** How far an opening's end may lie off the room's face and still count as in it: readers and hands round to centimetres. [m] */
export const FACE_FIT: Metres = 0.05;

/** Rings smaller than this are rounding, not floor: one grain wide and a millimetre long. [m²] */
export const NO_AREA = 1e-8;
