interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

type Edit = readonly [from: number, to: number, by: string];

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as Node).type === "string";

const isSay = (node: unknown): boolean => isNode(node) && node.type === "Identifier" && node.name === "say";

/**
 * What the tag `say` makes, written out: a text with its values is no call, so that a bundler leaves out tables of sentences which nobody uses.
 * Only the tag that the file imports is taken. A file that gives its name to anything else as well stays as it is: there a call may be another's.
 *
 * @param program - The syntax tree of the code, as ESTree has it.
 * @returns The code with objects in place of the tagged texts; undefined if there is nothing to write.
 */
export function saidWritten(code: string, program: unknown): string | undefined {
  const nodes = allNodes(program);
  if (!nodes.some(importsSay) || nodes.some(bindsSay)) return undefined;
  const edits = nodes
    .filter(({ type, tag }) => type === "TaggedTemplateExpression" && isSay(tag))
    .flatMap(written);
  if (edits.length === 0) return undefined;
  return edits
    .toSorted(([a], [b]) => b - a)
    .reduce((text, [from, to, by]) => text.slice(0, from) + by + text.slice(to), code);
}

/** A node and all that lies in it. */
function allNodes(root: unknown): readonly Node[] {
  const found: Node[] = [];
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one);
    if (!isNode(value)) return;
    found.push(value);
    for (const [field, child] of Object.entries(value)) if (field !== "parent") visit(child);
  };
  visit(root);
  return found;
}

const importsSay = ({ type, imported, local }: Node): boolean =>
  type === "ImportSpecifier" && isSay(imported) && isSay(local);

/** A parameter, variable, function, class or caught error of that name; a default value that has it counts too, which costs nothing but size. */
const bindsSay = ({ type, params, id, param }: Node): boolean =>
  [
    ...(/Function/.test(type) ? allNodes(params) : []),
    ...(/^(VariableDeclarator|(Function|Class)(Declaration|Expression))$/.test(type) ? allNodes(id) : []),
    ...(type === "CatchClause" ? allNodes(param) : []),
  ].some(isSay);

/** A tagged template as an object: the pieces between its values are what changes. Each value stands in round brackets, since a comma in it would part it. */
function written(tagged: Node): readonly Edit[] {
  const { quasis, expressions } = tagged.quasi as unknown as {
    readonly quasis: readonly { readonly value: { readonly cooked: string } }[];
    readonly expressions: readonly Node[];
  };
  const text = quasis.map(({ value }, i) => `${i === 0 ? "" : `{${i - 1}}`}${value.cooked}`).join("");
  const last = expressions.length;
  const froms = [tagged.start, ...expressions.map(({ end }) => end)];
  const tos = [...expressions.map(({ start }) => start), tagged.end];
  return froms.map((from, i) => {
    const before = i === 0 ? `({ text: ${JSON.stringify(text)}, values: [` : ")";
    const after = i === last ? "] })" : i === 0 ? "(" : ", (";
    return [from, tos[i]!, before + after];
  });
}
