import ts from "@typescript/typescript6";
import { expect, test } from "vitest";
import { sources } from "#engine";
import { type SourceFile, sourceFiles } from "./source-files.ts";

interface ExportedFunction {
  readonly where: string;
  readonly comment: string;
  readonly parameters: readonly string[];
}

/** Exported functions of a file with their doc comments, read from the syntax tree. */
function exportedFunctions(file: SourceFile): ExportedFunction[] {
  const tree = ts.createSourceFile(file.path, file.text, ts.ScriptTarget.ES2023, true);
  const found: ExportedFunction[] = [];
  const commentOf = (node: ts.Node): string =>
    (ts.getLeadingCommentRanges(file.text, node.getFullStart()) ?? [])
      .map((range) => file.text.slice(range.pos, range.end))
      .filter((text) => text.startsWith("/**"))
      .at(-1) ?? "";
  const isExported = (node: ts.HasModifiers): boolean =>
    node.modifiers?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword) ?? false;
  const names = (parameters: ts.NodeArray<ts.ParameterDeclaration>): string[] =>
    parameters.map((parameter) => parameter.name.getText(tree));
  for (const statement of tree.statements) {
    if (ts.isFunctionDeclaration(statement) && isExported(statement)) {
      found.push({
        where: `${file.path}: ${statement.name?.text}`,
        comment: commentOf(statement),
        parameters: names(statement.parameters),
      });
    }
    if (ts.isVariableStatement(statement) && isExported(statement)) {
      for (const declaration of statement.declarationList.declarations) {
        const value = declaration.initializer;
        if (value && (ts.isArrowFunction(value) || ts.isFunctionExpression(value))) {
          found.push({
            where: `${file.path}: ${declaration.name.getText(tree)}`,
            comment: commentOf(statement),
            parameters: names(value.parameters),
          });
        }
      }
    }
  }
  return found;
}

const engineFunctions = sourceFiles("src/engine").flatMap(exportedFunctions);

test("[DOC-1] every exported function of the engine has a doc comment that says something", () => {
  expect(engineFunctions.length).toBeGreaterThan(50);
  const bare = engineFunctions
    .filter((f) => f.comment.replace(/[/*\s]/g, "").length < 12)
    .map((f) => f.where);
  expect(bare).toEqual([]);
});

test("[DOC-2] every @param names a parameter that exists", () => {
  const wrong = engineFunctions.flatMap((f) =>
    [...f.comment.matchAll(/@param\s+([\w$]+)/g)]
      .map((match) => match[1]!)
      .filter((name) => !f.parameters.some((parameter) => new RegExp(`\\b${name}\\b`).test(parameter)))
      .map((name) => `${f.where}: ${name}`),
  );
  expect(wrong).toEqual([]);
});

test("[DOC-3] every @source names an entry of the register", () => {
  const wrong = sourceFiles("src/engine").flatMap((file) =>
    [...file.text.matchAll(/@source\s+([^\s,*]+)/g)]
      .map((match) => match[1]!)
      .filter((id) => !(id in sources))
      .map((id) => `${file.path}: ${id}`),
  );
  expect(wrong).toEqual([]);
});

/** Points of the plane read best side by side; everywhere else two positional parameters, then one object, are the limit. */
const positional = (where: string): number => (where.startsWith("src/engine/geometry/") ? 4 : 3);

test("[DOC-4] no function of the engine takes more than two positional parameters and one object (points in geometry: four)", () => {
  const long = engineFunctions.filter((f) => f.parameters.length > positional(f.where)).map((f) => f.where);
  expect(long).toEqual([]);
});
