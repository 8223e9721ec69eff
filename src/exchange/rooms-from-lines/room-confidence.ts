import { say } from "#engine";

/** How much surer a room is for lettering or a layer that names it. Weights by judgement, no source. */
export const CALLED = 0.15;
/** What speaks against a room that nothing names. */
export const NAMELESS = say`no name in it`;
