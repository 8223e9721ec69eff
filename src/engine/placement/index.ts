export { type Candidates, candidatesOf } from "./candidates.ts";
export { type Ceiling, ceilingOf, type Refusal } from "./ceiling.ts";
export type * from "./contract.ts";
export { type CoverAnswer, type CoverEffort, solveCover } from "./cover/index.ts";
export { placeRoom } from "./place-room.ts";
