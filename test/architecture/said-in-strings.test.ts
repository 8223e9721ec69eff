// biome-ignore-all lint/suspicious/noTemplateCurlyInString: these strings are code, and its texts have gaps.
import { relative } from "node:path";
import ts from "@typescript/typescript6";
import { expect, test } from "vitest";
import { root } from "./source-files.ts";

/** A type that may be a thing said: an object with a text and its values. */
function mayBeSaid(type: ts.Type): boolean {
  if (type.isUnion()) return type.types.some(mayBeSaid);
  const names = type.getProperties().map(({ name }) => name);
  return names.includes("text") && names.includes("values");
}

const isKeyed = ({ symbol }: ts.Type): boolean => /^(Readonly|Weak)?(Map|Set)$/.test(symbol?.name ?? "");

/** The questions about types that the places below are told by. */
function asking(checker: ts.TypeChecker) {
  const typeOf = (node: ts.Expression): ts.Type => {
    const type = checker.getTypeAtLocation(node);
    return checker.getBaseConstraintOfType(type) ?? type;
  };
  return {
    said: (node: ts.Expression | undefined): boolean => node !== undefined && mayBeSaid(typeOf(node)),
    /** A list of things said. */
    several: (node: ts.Expression): boolean => {
      const element = checker.getIndexTypeOfType(typeOf(node), ts.IndexKind.Number);
      return element !== undefined && mayBeSaid(element);
    },
    keyed: (node: ts.Expression): boolean => isKeyed(typeOf(node)),
    /** A map or a set whose keys are things said. */
    keyedBySaid: (node: ts.Expression): boolean => {
      const type = typeOf(node);
      const key = isKeyed(type) ? checker.getTypeArguments(type as ts.TypeReference)[0] : undefined;
      return key !== undefined && mayBeSaid(key);
    },
    nothing: (node: ts.Expression): boolean =>
      (typeOf(node).flags & (ts.TypeFlags.Undefined | ts.TypeFlags.Null)) !== 0,
  };
}

type Asked = ReturnType<typeof asking>;

const equalities: readonly ts.SyntaxKind[] = [
  ts.SyntaxKind.EqualsEqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsEqualsToken,
  ts.SyntaxKind.EqualsEqualsToken,
  ts.SyntaxKind.ExclamationEqualsToken,
];

/** Sums make a string of what is said; equalities hold it against another by identity, also where the other is a string. Against nothing it may be held. */
function wronglyJoined({ left, right, operatorToken: { kind } }: ts.BinaryExpression, asked: Asked): boolean {
  if (!asked.said(left) && !asked.said(right)) return false;
  if (kind === ts.SyntaxKind.PlusToken || kind === ts.SyntaxKind.PlusEqualsToken) return true;
  return equalities.includes(kind) && !asked.nothing(left) && !asked.nothing(right);
}

/** Lists that compare or join what they hold, maps and sets that are asked by it, and `String`. */
function wronglyCalled(call: ts.CallExpression, asked: Asked): boolean {
  const { expression } = call;
  const [argument] = call.arguments;
  if (ts.isIdentifier(expression)) return expression.text === "String" && asked.said(argument);
  if (!ts.isPropertyAccessExpression(expression)) return false;
  const { expression: on, name } = expression;
  if (["has", "get", "set", "add", "delete"].includes(name.text))
    return asked.said(argument) && asked.keyed(on);
  if (["join", "includes", "indexOf", "lastIndexOf"].includes(name.text)) return asked.several(on);
  if (name.text === "groupBy") return asked.keyedBySaid(call);
  return ["toSorted", "sort"].includes(name.text) && !argument && asked.several(on);
}

/** Whether a node makes a string of what is said, or looks for it by identity. */
function isMisuse(node: ts.Node, asked: Asked): boolean {
  if (ts.isTemplateSpan(node))
    return !ts.isTaggedTemplateExpression(node.parent.parent) && asked.said(node.expression);
  if (ts.isBinaryExpression(node)) return wronglyJoined(node, asked);
  if (ts.isSwitchStatement(node)) return asked.said(node.expression);
  if (ts.isNewExpression(node)) return asked.keyedBySaid(node);
  if (ts.isCallExpression(node)) return wronglyCalled(node, asked);
  if (!ts.isJsxAttribute(node) || node.name.getText() !== "key" || !node.initializer) return false;
  return ts.isJsxExpression(node.initializer) && asked.said(node.initializer.expression);
}

/** Places where a thing said is made into a string by the language itself, which gives "[object Object]", or held against another by identity. */
function misused(program: ts.Program): readonly string[] {
  const asked = asking(program.getTypeChecker());
  const found: string[] = [];
  for (const source of program.getSourceFiles()) {
    const path = relative(root, source.fileName);
    if (source.isDeclarationFile || !/^src\//.test(path) || /\.(test|fixture)\.tsx?$/.test(path)) continue;
    const visit = (node: ts.Node): void => {
      if (isMisuse(node, asked)) {
        const { line } = source.getLineAndCharacterOfPosition(node.getStart());
        found.push(`${path}:${line + 1} ${node.getText().slice(0, 80)}`);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

const misuses = [
  "`${words}`",
  "name + said",
  "let sum = name; sum += said",
  "String(words)",
  "words === name",
  'words === ""',
  "said !== said",
  "words == name",
  "name != words",
  'switch (words) { case "": break; }',
  "list.join()",
  "list.includes(said)",
  "list.indexOf(said)",
  "list.lastIndexOf(said)",
  "list.toSorted()",
  "[...list].sort()",
  "new Set(list)",
  "new Map(list.map((one) => [one, 1] as const))",
  "new Map<Said | string, number>()",
  "Map.groupBy(list, (one) => one)",
  "anything.has(words)",
  "anything.get(words)",
  "anything.set(said, 1)",
  "anything.delete(said)",
  "new Set<unknown>().add(said)",
  "<p key={words} />",
  "function same<Some extends Said | string>(one: Some) { return one === name; }",
];

const fine = [
  "say`${said} and ${name}`",
  "words === undefined || null !== words || perhaps == null",
  'typeof words === "string" && (words === name || new Set([words]).has(words))',
  "said.text === name",
  "list.toSorted((one, other) => one.values.length - other.values.length)",
  "list.map((one) => one.text).join()",
  "new Map(list.map((one) => [one.text, one] as const)).get(name)",
  "anything.get(said.text)",
  "<p key={said.text} />",
  "switch (said.text) { case name: break; }",
];

/** A file that stands nowhere, with a block of its own on each line. */
function sampleOf(lines: readonly string[]): { readonly program: ts.Program; readonly before: number } {
  const path = `${root}src/sample.tsx`;
  const head = [
    "interface Said { readonly text: string; readonly values: readonly (string | number)[] }",
    "declare function say(pieces: TemplateStringsArray, ...values: readonly (string | Said)[]): Said;",
    "declare const words: Said | string, perhaps: Said | undefined, said: Said, name: string;",
    "declare const list: readonly Said[], anything: Map<unknown, number>;",
  ];
  const text = [...head, ...lines.map((line) => `{ ${line}; }`)].join("\n");
  const options: ts.CompilerOptions = {
    strict: true,
    types: [],
    target: ts.ScriptTarget.ESNext,
    jsx: ts.JsxEmit.Preserve,
  };
  const host = ts.createCompilerHost(options);
  const onDisk = host.getSourceFile;
  host.getSourceFile = (file, ...rest) =>
    file === path
      ? ts.createSourceFile(path, text, ts.ScriptTarget.ESNext, true, ts.ScriptKind.TSX)
      : onDisk(file, ...rest);
  return { program: ts.createProgram([path], options, host), before: head.length };
}

test("each way in which a thing said is misused is told once, and nothing else", () => {
  const { program, before } = sampleOf([...fine, ...misuses]);
  const told = misused(program).map((place) => Number(/:(\d+) /.exec(place)![1]) - before - fine.length - 1);
  expect(told.map((i) => misuses[i] ?? fine[fine.length + i])).toEqual(misuses);
});

test("nothing that is said is made into a string without its language, or compared by identity", () => {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile);
  const { options, fileNames } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const program = ts.createProgram(fileNames, {
    ...options,
    noEmit: true,
    incremental: false,
    composite: false,
  });
  expect(misused(program)).toEqual([]);
}, 180_000);
