export { calculable, isCalculable } from "./calculable.ts";
export { clearanceOf } from "./clearance.ts";
export { linksOf, type RoomLink, roomsReachedFrom } from "./connected.ts";
export { planningDefaults } from "./defaults.ts";
export { flightEdge, floorHeight } from "./floor.ts";
export {
  anInterference,
  anyDwellPlace,
  dwellKindNames,
  interferenceKindNames,
  useNames,
} from "./kind-names.ts";
export { lensOver } from "./lens-over.ts";
export { controlledRooms, lookUp, roomInSentence, roomTitle, type SiteLookUp } from "./look-up.ts";
export {
  anObstacle,
  nameOfOpening,
  nameOfThing,
  openingInSentence,
  rounded,
  thingInSentence,
} from "./names.ts";
export { modelProblems } from "./problems/detectors.ts";
export { isUsableOutline } from "./problems/outlines.ts";
export { floorOf } from "./problems/rooms.ts";
export { siteProblems } from "./problems.ts";
export { faceOf, isWalkable, openingWidth, type Reveal, revealOf } from "./reveal.ts";
export type * from "./site.ts";
