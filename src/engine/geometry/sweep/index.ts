export { addChain, addEndless, addRing, ENDLESS, type SweepEdges, sweepEdges } from "./edges.ts";
export { nearestSeen } from "./line-seen.ts";
export { regionOfWedges } from "./rings.ts";
export { sweep } from "./sweep.ts";
export { type Wedges, wedgesHave } from "./wedges.ts";
