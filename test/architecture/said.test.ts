import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "@typescript/typescript6";
import { describe, expect, test } from "vitest";
import { hasWords } from "#engine";
import { root, sourceFiles } from "./source-files.ts";

/** Every text with words that stands under the tag `say`, and every gap that is filled with bare English. */
function saidIn(path: string): { readonly texts: readonly string[]; readonly bare: readonly string[] } {
  const source = ts.createSourceFile(
    path,
    readFileSync(join(root, path), "utf8"),
    ts.ScriptTarget.ESNext,
    true,
  );
  const texts: string[] = [];
  const bare: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === "say") {
      texts.push(textOf(node.template));
      if (ts.isTemplateExpression(node.template))
        for (const { expression } of node.template.templateSpans)
          for (const literal of literalsOf(expression))
            if (hasWords(literal) && /\p{Ll}{2}/u.test(literal)) bare.push(`${path}: ${literal}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { texts, bare };
}

/** As the tag puts it together. */
function textOf(template: ts.TemplateLiteral): string {
  if (ts.isNoSubstitutionTemplateLiteral(template)) return template.text;
  return template.templateSpans.reduce(
    (text, { literal }, i) => `${text}{${i}}${literal.text}`,
    template.head.text,
  );
}

/** Literals that an expression may come to by itself: a choice between two, or the literal. */
function literalsOf(expression: ts.Expression): readonly string[] {
  if (ts.isStringLiteralLike(expression)) return [expression.text];
  if (ts.isTemplateExpression(expression))
    return [expression.head.text, ...expression.templateSpans.map(({ literal }) => literal.text)];
  if (ts.isConditionalExpression(expression))
    return [...literalsOf(expression.whenTrue), ...literalsOf(expression.whenFalse)];
  if (ts.isParenthesizedExpression(expression)) return literalsOf(expression.expression);
  return [];
}

const said = ["src/engine", "src/output", "src/job", "src/exchange"].flatMap((room) =>
  sourceFiles(room).map(({ path }) => saidIn(path)),
);
const texts = new Set(said.flatMap((one) => one.texts).filter(hasWords));

const others = ["de", "fr", "es"] as const;
const partsOf = (language: string): readonly string[] =>
  readdirSync(join(root, `src/output/words/${language}`))
    .filter((part) => part !== "problems.json")
    .sort();
const read = (language: string, part: string): Readonly<Record<string, string>> =>
  JSON.parse(readFileSync(join(root, `src/output/words/${language}/${part}`), "utf8")) as Record<
    string,
    string
  >;
const gapsOf = (text: string): readonly string[] =>
  [...new Set([...text.matchAll(/\{\w+\}/g)].map(([gap]) => gap))].sort();

test("no gap of what is said is filled with bare English", () => {
  expect(said.flatMap(({ bare }) => bare)).toEqual([]);
});

describe.each(others)("what is said in the language %s", (language) => {
  const entries = partsOf(language).flatMap((part) => Object.entries(read(language, part)));

  test("has the parts that the others have, and every text stands in one of them", () => {
    for (const other of others) expect(partsOf(language)).toEqual(partsOf(other));
    const twice = entries.map(([text]) => text).filter((text, i, all) => all.indexOf(text) !== i);
    expect(twice).toEqual([]);
  });

  test("says every text of the engine, of jobs, of readers and of the papers, and no other", () => {
    const own = new Set(entries.map(([text]) => text));
    expect({
      missing: [...texts].filter((text) => !own.has(text)),
      unused: [...own].filter((text) => !texts.has(text)),
    }).toEqual({ missing: [], unused: [] });
  });

  test("fills the gaps of the English text, and leaves none in English", () => {
    for (const [text, own] of entries) {
      expect(gapsOf(own), text).toEqual(gapsOf(text));
      expect(own.trim(), text).not.toBe("");
      const words = text.replace(/\{\w+\}/g, "").match(/[A-Za-z]{3,}/g) ?? [];
      if (words.length >= 4) expect(own, text).not.toBe(text);
    }
  });
});
