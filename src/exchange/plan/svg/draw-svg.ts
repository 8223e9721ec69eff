import { type Problem, say } from "#engine";
import { leftOutList } from "../../ifc/left-out.ts";
import type { LineBox } from "../../linework/linework.ts";
import type { LeftOut } from "../../survey.ts";
import type { PlanLimits } from "../limits.ts";
import { type Clip, clippedBy, unclipped } from "../page/clip.ts";
import { type Collector, OverLimit } from "../page/collect.ts";
import { drawStrokes } from "../page/draw.ts";
import { type Stroke, strokesOf } from "../page/flatten.ts";
import { cornersOf, growth, identity, type Matrix, placed, product } from "../page/matrix.ts";
import type { SvgElement, SvgFile } from "./element.ts";
import { lengthOf } from "./lengths.ts";
import type { SvgPlace } from "./place.ts";
import { type PathReader, stepsOf } from "./shapes.ts";
import { initialStyle, rulesOf, styleOf } from "./style.ts";
import { drawText } from "./texts.ts";
import { transformOf } from "./transforms.ts";
import { innerMatrix, type SvgSheet } from "./viewport.ts";

export interface DrawSvgOptions {
  readonly collector: Collector;
  readonly limits: PlanLimits;
  readonly sheet: SvgSheet;
  readonly readPath: PathReader;
  /** [drawing units] */
  readonly tolerance: number;
}

/** Draws a file into the collector. @returns What was left out, and what is worth a look */
export function drawSvg(
  file: SvgFile,
  options: DrawSvgOptions,
): { readonly leftOut: readonly LeftOut[]; readonly notes: readonly Problem[] } {
  const { collector, limits, sheet, readPath, tolerance } = options;
  const rules = rulesOf(file.styles);
  const left = leftOutList();
  const loops = new Set<string>();
  const [width, height] = sheet.size ?? [100, 100];
  let drawn = 0;

  const draw = (element: SvgElement, parent: SvgPlace): void => {
    if (++drawn > limits.elements) throw new OverLimit(say`elements`, limits.elements);
    if (parent.depth > limits.depth) {
      left.add(element.name, say`nested too deep`);
      return;
    }
    const { style, clip } = styleOf(element, parent.style, rules);
    const matrix = product(parent.matrix, transformOf(element.attributes.transform));
    const { groupmode, label } = element.attributes;
    const group = groupmode === "layer" && label ? label.slice(0, 200) : parent.group;
    const own: SvgPlace = { ...parent, matrix, style, group, depth: parent.depth + 1 };
    const place = clip === undefined ? own : { ...own, clip: narrowed(clip, own) };
    switch (element.name) {
      case "g":
      case "a":
        drawChildren(element, place);
        return;
      case "switch": {
        const first = element.children.find((child) => typeof child !== "string");
        if (first) draw(first as SvgElement, place);
        return;
      }
      case "svg":
        drawChildren(element, inside(element, place, element));
        return;
      case "use":
        drawUse(element, place);
        return;
      case "text":
        drawText(element, place, { collector, rules });
        return;
      case "image":
        left.add(say`picture`, say`holds no lines`);
        return;
      case "defs":
      case "symbol":
      case "clipPath":
      case "tspan":
        return;
      default:
        drawShape(element, place);
    }
  };

  const drawChildren = (element: SvgElement, place: SvgPlace): void => {
    for (const child of element.children) if (typeof child !== "string") draw(child, place);
  };

  const drawShape = (element: SvgElement, place: SvgPlace): void => {
    const shape = stepsOf(element, place.viewport, readPath);
    if (!shape) return;
    if (!shape.sound) left.add(element.name, say`its data cannot be read to the end`);
    const { style, group } = place;
    if (style.opacity === 0 || !style.visible) return;
    const shown = style.displayed;
    const lines = style.line !== "none" && style.lineOpacity > 0 && style.lineWidth > 0;
    const width = style.lineWidth * growth(place.matrix);
    drawStrokes(collector, {
      strokes: strokesOf(shape.steps, place.matrix, tolerance),
      clip: place.clip,
      sheet: sheet.size ?? [Infinity, Infinity],
      line: lines ? { group, shown, kind: "line", colour: style.line, width } : undefined,
      fill:
        style.fill !== "none" && style.fillOpacity > 0 && element.name !== "line"
          ? { group, shown, kind: "fill", colour: style.fill }
          : undefined,
    });
  };

  const drawUse = (element: SvgElement, place: SvgPlace): void => {
    const { href = "", x, y, width: w, height: h } = element.attributes;
    const part = href.startsWith("#") ? file.byId.get(href.slice(1)) : undefined;
    if (!part) {
      left.add(
        "use",
        href.startsWith("#") ? say`the part is not in the file` : say`the part is in another file`,
      );
      return;
    }
    const id = href.slice(1);
    if (place.uses.includes(id)) {
      loops.add(id);
      return;
    }
    const across = lengthOf(x, { whole: place.viewport.width }) ?? 0;
    const up = lengthOf(y, { whole: place.viewport.height }) ?? 0;
    const matrix = product(place.matrix, [1, 0, 0, 1, across, up]);
    const within = { ...place, matrix, uses: [...place.uses, id] };
    collector.beginBlock({
      name: id,
      at: placed(matrix, 0, 0),
      turn: Math.atan2(matrix[1], matrix[0]),
      // y is turned up for the whole drawing, so that a part which is not mirrored has a determinant below 0.
      scale: [
        Math.hypot(matrix[0], matrix[1]),
        Math.hypot(matrix[2], matrix[3]) * (matrix[0] * matrix[3] - matrix[1] * matrix[2] > 0 ? -1 : 1),
      ],
    });
    if (part.name === "symbol" || part.name === "svg") {
      const { style } = styleOf(part, place.style, rules);
      const sized = { ...part.attributes, ...(w ? { width: w } : {}), ...(h ? { height: h } : {}) };
      const symbol: SvgElement = { ...part, attributes: sized };
      drawChildren(part, inside(symbol, { ...within, style }, part));
    } else draw(part, within);
    collector.endBlock();
  };

  /** Into an svg or symbol inside the drawing: its place, its box, and nothing beyond. */
  const inside = (sized: SvgElement, place: SvgPlace, element: SvgElement): SvgPlace => {
    const { x, y, width: w, height: h } = sized.attributes;
    const { width: wide, height: high } = place.viewport;
    const own = {
      x: element.name === "symbol" ? 0 : (lengthOf(x, { whole: wide }) ?? 0),
      y: element.name === "symbol" ? 0 : (lengthOf(y, { whole: high }) ?? 0),
      width: lengthOf(w, { whole: wide }) ?? wide,
      height: lengthOf(h, { whole: high }) ?? high,
    };
    const corners = cornersOf(place.matrix, [own.x, own.y, own.x + own.width, own.y + own.height]);
    const matrix = product(place.matrix, innerMatrix(element, own));
    const cuts = w !== undefined && h !== undefined;
    return {
      ...place,
      matrix,
      clip: cuts ? clippedBy(place.clip, corners) : place.clip,
      viewport: { width: own.width, height: own.height },
    };
  };

  /** The clip of a place narrowed by a clipPath; a clip that is not in the file cuts nothing. */
  const narrowed = (id: string, place: SvgPlace): Clip => {
    const element = file.byId.get(id);
    if (element?.name !== "clipPath" || element.attributes.clipPathUnits === "objectBoundingBox")
      return place.clip;
    const matrix = product(place.matrix, transformOf(element.attributes.transform));
    const strokes = outlinesIn(element, matrix, 0);
    if (strokes.length === 0) return clippedBy(place.clip, [-1e9, -1e9, -1e9, -1e9]);
    if (strokes.length === 1) return clippedBy(place.clip, strokes[0]!.points);
    // Of several outlines the common box is sure to hold what shows.
    return clippedBy(
      place.clip,
      strokes.flatMap((stroke) => [...stroke.points]),
    );
  };

  const outlinesIn = (element: SvgElement, matrix: Matrix, depth: number): readonly Stroke[] =>
    element.children.flatMap((child) => {
      if (typeof child === "string" || depth > 4) return [];
      const own = product(matrix, transformOf(child.attributes.transform));
      if (child.name === "use") {
        const part = file.byId.get((child.attributes.href ?? "").replace(/^#/, ""));
        const shift = product(own, [
          ...[1, 0, 0, 1],
          lengthOf(child.attributes.x, {}) ?? 0,
          lengthOf(child.attributes.y, {}) ?? 0,
        ] as unknown as Matrix);
        return part ? outlinesIn({ ...child, children: [part] }, shift, depth + 1) : [];
      }
      const shape = stepsOf(child, { width, height }, readPath);
      return shape ? strokesOf(shape.steps, own, tolerance) : [];
    });

  const whole: LineBox | undefined = sheet.size && [0, 0, ...sheet.size];
  drawChildren(file.root, {
    matrix: product(sheet.matrix, transformOf(file.root.attributes.transform)),
    clip: whole ? clippedBy(unclipped, cornersOf(identity, whole)) : unclipped,
    style: styleOf(file.root, initialStyle, rules).style,
    group: undefined,
    viewport: { width, height },
    depth: 0,
    uses: [],
  });
  for (const [name, count] of file.passed)
    if (worthSaying.has(name))
      for (let i = 0; i < count; i++) left.add(name, say`is never run or shown here`);
  const notes: Problem[] = [...loops].map((part) => ({ code: "plan-svg-loop", values: { part } }));
  if (file.entities) notes.push({ code: "plan-svg-entities", values: {} });
  return { leftOut: left.list(), notes };
}

const worthSaying = new Set(["script", "foreignObject", "iframe", "audio", "video"]);
