import type { Problem, Rule, RulePack, RulePredicate } from "#engine";
import { rulePackSchema } from "./schema.ts";

export type RulePackResult = { readonly pack: RulePack } | { readonly problems: readonly Problem[] };

/** Reads a firm's own rule pack (JSON). @returns The pack, on because its owner chose it; or every fault with its place */
export function readRulePack(text: string): RulePackResult {
  let value: unknown;
  try {
    value = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const reason = (error as Error).message.slice(0, 120);
    return { problems: [{ code: "rule-pack-not-json", values: { reason } }] };
  }
  const parsed = rulePackSchema.safeParse(value);
  if (!parsed.success) {
    return {
      problems: parsed.error.issues.slice(0, 20).map((issue) => ({
        code: "rule-pack-wrong",
        values: {
          where: place(issue.path),
          reason: issue.message
            .replace("received undefined", "but it is missing")
            .replace(/[.\s]+$/, "")
            .slice(0, 160),
        },
      })),
    };
  }
  const { code, title, jurisdiction, edition } = parsed.data;
  const codes = parsed.data.rules.map((rule) => rule.code);
  const twice = [...new Set(codes.filter((one, i) => codes.indexOf(one) !== i))];
  if (twice.length > 0)
    return { problems: twice.map((one) => ({ code: "rule-pack-code-twice", values: { code: one } })) };
  const rules = parsed.data.rules.map(
    (rule): Rule => ({ ...rule, when: given(rule.when), certainty: "own" }),
  );
  return { pack: { code, title, jurisdiction, edition, source: "OWN-RULES", onByDefault: true, rules } };
}

/** Absent means absent. */
const given = (when: object): RulePredicate =>
  Object.fromEntries(Object.entries(when).filter(([, value]) => value !== undefined));

const place = (path: readonly PropertyKey[]): string =>
  path.length === 0
    ? "the top"
    : path
        .map((step, i) => (typeof step === "number" ? `[${step + 1}]` : `${i > 0 ? "." : ""}${String(step)}`))
        .join("");
