export type { Contact, DetectorInputs, LoadKind, TerminalKind } from "./contact.ts";
export { declaredRadius, onsetOfPass, reachOfWalk } from "./direction.ts";
export { footprintRadius, lintelLimit, shadowOf, widestAngle } from "./footprint.ts";
export {
  type BlindBand,
  blindBand,
  blindCone,
  lostFrom,
  placeOnDome,
  widthOnDome,
} from "./mask-geometry.ts";
export { facetBeam, type MaskedFacet, maskedFacets } from "./masked-facets.ts";
export { type MaskedSector, maskContains, maskedDistances, maskedSectors } from "./masks.ts";
export { type LensPlace, maskForSource, maskMargins, masksForFloor } from "./masks-for.ts";
export type {
  Declaration,
  DetectorModel,
  Fixing,
  Indicator,
  Lens,
  LensMask,
  OutputKind,
  ZoneKind,
  ZoneRow,
} from "./model.ts";
export {
  declaredReachAt,
  longestReach,
  type Reach,
  type ReachShape,
  reachOf,
  reachTowards,
  scaledReach,
} from "./reach.ts";
export {
  bandRadiation,
  clothingTemperature,
  contrastAt,
  contrastTable,
  DECLARED_AT,
  seenReliably,
  UNRELIABLE_FROM,
  warmthFactor,
} from "./warmth.ts";
