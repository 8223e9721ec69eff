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

/** Places where a thing said is made into a string by the language itself, which gives "[object Object]", or held against another by identity. */
function misused(program: ts.Program): readonly string[] {
  const checker = program.getTypeChecker();
  const found: string[] = [];
  for (const source of program.getSourceFiles()) {
    if (
      source.isDeclarationFile ||
      !/\/src\//.test(source.fileName) ||
      /\.(test|fixture)\.tsx?$/.test(source.fileName)
    )
      continue;
    const tell = (node: ts.Node): void => {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${relative(root, source.fileName)}:${line + 1} ${node.getText().slice(0, 80)}`);
    };
    const said = (node: ts.Expression): boolean => mayBeSaid(checker.getTypeAtLocation(node));
    const several = (node: ts.Expression): boolean => {
      const type = checker.getTypeAtLocation(node);
      const element = checker.getIndexTypeOfType(type, ts.IndexKind.Number);
      return element !== undefined && mayBeSaid(element);
    };
    const visit = (node: ts.Node): void => {
      if (ts.isTemplateExpression(node) && !ts.isTaggedTemplateExpression(node.parent))
        for (const { expression } of node.templateSpans) if (said(expression)) tell(expression);
      if (ts.isBinaryExpression(node)) {
        const { left, right, operatorToken } = node;
        const compares = [ts.SyntaxKind.EqualsEqualsEqualsToken, ts.SyntaxKind.ExclamationEqualsEqualsToken];
        if (operatorToken.kind === ts.SyntaxKind.PlusToken && (said(left) || said(right))) tell(node);
        if (compares.includes(operatorToken.kind) && said(left) && said(right)) tell(node);
      }
      if (ts.isCallExpression(node)) {
        const [argument] = node.arguments;
        if (ts.isPropertyAccessExpression(node.expression)) {
          const { expression: on, name } = node.expression;
          if (
            ["join", "includes", "indexOf", "toSorted", "sort"].includes(name.text) &&
            several(on) &&
            !(name.text.endsWith("ort") && argument)
          )
            tell(node);
        } else if (
          ts.isIdentifier(node.expression) &&
          node.expression.text === "String" &&
          argument &&
          said(argument)
        )
          tell(node);
      }
      if (ts.isNewExpression(node) && ["Set"].includes(node.expression.getText())) {
        const [argument] = node.arguments ?? [];
        if (argument && several(argument)) tell(node);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

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
