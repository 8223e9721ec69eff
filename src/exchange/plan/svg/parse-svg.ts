import { english, type Problem, say, type Words } from "#engine";
import type { PlanLimits } from "../limits.ts";
import { OverLimit } from "../page/collect.ts";
import type { SvgElement, SvgFile } from "./element.ts";

/**
 * Reads SVG text, element by element, into plain data. Entities that the file declares are never expanded: they stay as
 * they are written.
 *
 * @source W3C-SVG2, chapters 5 (structure) and 6 (styling) for which elements and attributes draw
 */
export async function parseSvg(text: string, limits: PlanLimits): Promise<SvgFile | Problem> {
  const { SaxesParser } = await import("saxes");
  const parser = new SaxesParser({ position: true, xmlns: false as const });
  const byId = new Map<string, SvgElement>();
  const passed = new Map<string, number>();
  const open: SvgElement[] = [];
  let root: SvgElement | undefined;
  let passing = 0;
  let depth = 0;
  let styling = 0;
  let styles = "";
  let elements = 0;
  let entities = false;
  parser.on("error", (error) => {
    if (/entity/.test(error.message)) entities = true;
    else throw new Unreadable(error.message.replace(/^\d+:\d+:\s*/, ""), parser.line);
  });
  parser.on("doctype", (doctype) => {
    entities ||= /<!ENTITY/.test(doctype);
  });
  parser.on("opentag", (tag) => {
    depth++;
    if (depth > limits.depth) throw new TooDeep();
    if (++elements > limits.elements) throw new OverLimit(say`elements`, limits.elements);
    const [prefix, local] = tag.name.includes(":") ? tag.name.split(":", 2) : ["", tag.name];
    const foreign = prefix !== "" && prefix !== "svg";
    if (local === "style" && !foreign) styling++;
    if (passing > 0 || foreign || !drawing.has(local!)) {
      passing++;
      if (passing === 1 && !foreign) passed.set(local!, (passed.get(local!) ?? 0) + 1);
      return;
    }
    const element: SvgElement = { name: local!, attributes: kept(tag.attributes), children: [] };
    if (!root) {
      if (local !== "svg") throw new Unreadable(say`it does not begin with an svg element`, parser.line);
      root = element;
    }
    open.at(-1)?.children.push(element);
    open.push(element);
    const { id } = element.attributes;
    if (id !== undefined && !byId.has(id)) byId.set(id, element);
  });
  parser.on("closetag", (tag) => {
    depth--;
    if (/^(svg:)?style$/.test(tag.name)) styling--;
    if (passing > 0) passing--;
    else open.pop();
  });
  const take = (letters: string): void => {
    if (styling > 0) styles += letters;
    else if (passing === 0 && open.length > 0 && texts.has(open.at(-1)!.name))
      open.at(-1)!.children.push(letters);
  };
  parser.on("text", take);
  parser.on("cdata", take);
  try {
    parser.write(text).close();
  } catch (error) {
    if (error instanceof TooDeep) return { code: "plan-svg-too-deep", values: { limit: limits.depth } };
    if (error instanceof Unreadable)
      return { code: "plan-svg-damaged", values: { line: error.line, reason: error.reason } };
    throw error;
  }
  if (!root) return { code: "plan-svg-damaged", values: { line: 1, reason: say`it holds no svg element` } };
  return { root, byId, styles, elements, entities, passed };
}

class TooDeep extends Error {}

class Unreadable extends Error {
  readonly reason: Words;
  readonly line: number;
  constructor(reason: Words, line: number) {
    super(english(reason));
    this.reason = typeof reason === "string" ? reason.slice(0, 120).replace(/[.\s]+$/, "") : reason;
    this.line = line;
  }
}

const texts = new Set(["text", "tspan", "a"]);

const drawing = new Set([
  ...["svg", "g", "a", "switch", "symbol", "defs", "use", "clipPath", "image"],
  ...["path", "line", "polyline", "polygon", "rect", "circle", "ellipse", "text", "tspan"],
]);

const attributes = new Set([
  ...["id", "class", "style", "transform", "viewBox", "preserveAspectRatio", "x", "y", "width", "height"],
  ...["d", "points", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "dx", "dy", "href"],
  ...["stroke", "fill", "stroke-width", "stroke-opacity", "fill-opacity", "opacity", "color"],
  ...["display", "visibility", "font-size", "text-anchor", "clip-path", "clipPathUnits"],
  // Drawing programs mark the groups that are layers with these two, each in a namespace of its own.
  ...["groupmode", "label"],
]);

const kept = (all: Readonly<Record<string, string>>): Record<string, string> => {
  const own: Record<string, string> = {};
  for (const [name, value] of Object.entries(all)) {
    const local = name.slice(name.indexOf(":") + 1);
    if (attributes.has(local) && !name.startsWith("xmlns") && !(local in own && local !== name))
      own[local] = value;
  }
  return own;
};
