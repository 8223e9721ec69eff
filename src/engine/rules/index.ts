export { evaluateRules, longestDelayAllowed, type RuleFacts, type RuleResult } from "./evaluate.ts";
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
