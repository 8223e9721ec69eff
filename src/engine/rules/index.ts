export { evaluateRules, longestDelayAllowed, type RuleFacts, type RuleResult } from "./evaluate.ts";
export { openFacts, type RoomResults } from "./open-facts.ts";
export { type PackStanding, packsInForce } from "./packs-in-force.ts";
export {
  type Rule,
  type RuleCertainty,
  type RuleLimit,
  type RuleMeasure,
  type RulePack,
  type RulePredicate,
  type RuleSpace,
  ruleMeasures,
  ruleSpaces,
} from "./rule-pack.ts";
export { shippedPacks } from "./shipped-packs.ts";
export { spaceByName, spacesOf } from "./space-of-room.ts";
