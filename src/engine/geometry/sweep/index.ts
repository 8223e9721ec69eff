export { addChain, addEndless, addRing, ENDLESS, type SweepEdges, sweepEdges } from "./edges.ts";
export { regionOfWedges } from "./rings.ts";
export { sweep } from "./sweep.ts";
export { type Wedges, wedgesHave } from "./wedges.ts";
