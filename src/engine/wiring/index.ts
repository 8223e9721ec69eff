export * from "./box-fill.ts";
export * from "./breaker-checks.ts";
export * from "./capacity.ts";
export { designCurrent } from "./circuit-case.ts";
export { circuitChecks } from "./circuit-checks.ts";
export * from "./circuit-tree.ts";
export { COIL_CORES, type CoilCable, coilCable } from "./coil-cable.ts";
export * from "./contact-checks.ts";
export { requiredPeak } from "./contact-inrush.ts";
export type { CablePlace, CableWay, CeilingWays } from "./derive/ceiling-ways.ts";
export { ceilingWays } from "./derive/ceiling-ways.ts";
export type { CableUse, CircuitRoute, RouteCable, RouteNode } from "./derive/circuit-route.ts";
export { type DerivedCircuit, type DerivedWiring, deriveWiring } from "./derive/derive-wiring.ts";
export type { GroupChoice } from "./derive/group-choices.ts";
export * from "./drivers-per-breaker.ts";
export * from "./fault.ts";
export * from "./findings.ts";
export * from "./groups.ts";
export * from "./inrush.ts";
export * from "./leakage.ts";
export * from "./materials.ts";
export * from "./model.ts";
export * from "./mounting.ts";
export { circuitNamed } from "./of-site/circuits-of.ts";
export * from "./of-site/found.ts";
export { type BuiltWiring, hasWiring, wiringOfSite } from "./of-site/of-site.ts";
export {
  type CircuitReview,
  type ContactReview,
  reviewWiring,
  type WiringReview,
} from "./of-site/review-wiring.ts";
export * from "./price-list.ts";
export { packChecks } from "./relay-pack.ts";
export * from "./routes/chain.ts";
export * from "./routes/distances.ts";
export * from "./routes/route.ts";
export * from "./routes/tree.ts";
export * from "./rules/back-feed.ts";
export { suppressorLeakage } from "./rules/outputs.ts";
export type { RuleHit, RuleId, WiringRule } from "./rules/rule.ts";
export { wiringRules } from "./rules/rules.ts";
export * from "./smallest-section.ts";
export * from "./supply.ts";
export * from "./switched-group.ts";
export * from "./tables/capacity.ts";
export * from "./tables/protection.ts";
export * from "./tables/resistance.ts";
export * from "./tables/united-states.ts";
export * from "./voltage-drop.ts";
export type { WiringCheck } from "./wiring-check.ts";
