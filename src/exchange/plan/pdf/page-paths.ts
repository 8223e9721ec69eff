import { type Clip, clippedBy, unclipped } from "../page/clip.ts";
import type { Collector } from "../page/collect.ts";
import { drawStrokes } from "../page/draw.ts";
import { type PathSteps, type Stroke, strokesOf } from "../page/flatten.ts";
import { cornersOf, growth, type Matrix, product } from "../page/matrix.ts";
import { type ContentGroups, type GroupMark, groupOf } from "./content-groups.ts";
import type { PdfReader } from "./open-pdf.ts";

/** Operations of a page with their arguments, as the package lists them. */
export interface OperationList {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly (readonly unknown[] | null)[];
}

interface PenState {
  readonly matrix: Matrix;
  readonly clip: Clip;
  /** undefined: nothing is drawn. */
  readonly line: string | undefined;
  readonly fill: string | undefined;
  readonly width: number;
  readonly lineAlpha: number;
  readonly fillAlpha: number;
}

export interface PathContext {
  readonly operations: PdfReader["OPS"];
  readonly collector: Collector;
  readonly groups: ContentGroups;
  /** From the page's own coordinates to the sheet: turned as shown, origin lower left. */
  readonly matrix: Matrix;
  /** Size of the sheet. */
  readonly size: readonly [number, number];
  readonly tolerance: number;
}

/**
 * Follows the operations of a page and collects what they draw.
 *
 * Both lines and edges of filled areas are taken, since walls are often filled; a fill that covers the whole sheet is its
 * background. Dashes are taken as whole lines. Content of a soft mask and what is fully transparent is not drawn.
 *
 * @source ISO-32000, sections 8.4 (state), 8.5 (paths, clips), 8.10 (forms), 8.11 (optional content)
 */
export function collectPaths(list: OperationList, context: PathContext): void {
  const { operations: op, collector, groups, matrix, size, tolerance } = context;
  const kinds = kindsOf(op);
  let state: PenState = {
    matrix,
    clip: clippedBy(unclipped, [0, 0, size[0], 0, size[0], size[1], 0, size[1]]),
    line: "#000000",
    fill: "#000000",
    width: 1,
    lineAlpha: 1,
    fillAlpha: 1,
  };
  const saved: PenState[] = [];
  /** Where the stack stood at the beginning of forms and groups: what a form leaves saved ends with it. */
  const forms: number[] = [];
  const marks: GroupMark[] = [];
  let clips = false;
  let masks = 0;
  const back = (): void => {
    const depth = forms.pop();
    if (depth === undefined) return;
    saved.length = Math.min(saved.length, depth + 1);
    state = saved.pop() ?? state;
  };
  for (let i = 0; i < list.fnArray.length; i++) {
    const args = list.argsArray[i] ?? [];
    switch (kinds.get(list.fnArray[i]!)) {
      case "save":
        saved.push(state);
        break;
      case "restore":
        if (saved.length > (forms.at(-1) ?? -1) + 1) state = saved.pop()!;
        break;
      case "transform":
        state = { ...state, matrix: product(state.matrix, args as unknown as Matrix) };
        break;
      case "formBegin": {
        forms.push(saved.length);
        saved.push(state);
        const [inner, box] = args as readonly [ArrayLike<number> | null, ArrayLike<number> | null];
        if (inner)
          state = { ...state, matrix: product(state.matrix, Array.from(inner) as unknown as Matrix) };
        if (box) state = { ...state, clip: clippedBy(state.clip, cornersOf(state.matrix, Array.from(box))) };
        break;
      }
      case "groupBegin": {
        forms.push(saved.length);
        saved.push(state);
        const group = args[0] as GroupOptions;
        if (group.smask || masks > 0) masks++;
        // The group's matrix comes with the form that follows; here it places the box alone.
        const inner = group.matrix ? product(state.matrix, group.matrix) : state.matrix;
        if (group.bbox)
          state = { ...state, clip: clippedBy(state.clip, cornersOf(inner, Array.from(group.bbox))) };
        break;
      }
      case "groupEnd":
        if (masks > 0) masks--;
        back();
        break;
      case "formEnd":
        back();
        break;
      case "markProperties":
        marks.push(args[0] === "OC" ? { content: args[1] } : {});
        break;
      case "mark":
        marks.push({});
        break;
      case "markEnd":
        marks.pop();
        break;
      case "width":
        state = { ...state, width: Number(args[0]) };
        break;
      case "lineColour":
        state = { ...state, line: String(args[0]) };
        break;
      case "fillColour":
        state = { ...state, fill: String(args[0]) };
        break;
      case "linePattern":
        state = { ...state, line: "pattern" };
        break;
      case "fillPattern":
        state = { ...state, fill: "pattern" };
        break;
      case "lineNone":
        state = { ...state, line: undefined };
        break;
      case "fillNone":
        state = { ...state, fill: undefined };
        break;
      case "settings":
        state = withSettings(state, args[0]);
        break;
      case "clip":
        clips = true;
        break;
      case "path": {
        const steps = (args[1] as readonly (PathSteps | null)[])[0];
        const strokes = steps ? strokesOf(steps, state.matrix, tolerance) : [];
        if (masks === 0) draw(strokes, args[0] as number);
        // A clip narrows what comes after the path that sets it, not that path. Without a path it is taken as none.
        if (clips && strokes.length > 0)
          state = {
            ...state,
            clip: clippedBy(state.clip, strokes.length === 1 ? strokes[0]!.points : boxRing(strokes)),
          };
        else if (clips && steps) state = { ...state, clip: nothing };
        clips = false;
        break;
      }
      default:
        break;
    }
  }

  function draw(strokes: readonly Stroke[], way: number): void {
    const lines = strokers.some((name) => op[name] === way) && state.lineAlpha > 0;
    const fills = fillers.some((name) => op[name] === way) && state.fillAlpha > 0;
    const { name: group, shown } = groupOf(groups, marks);
    const width = state.width * growth(state.matrix);
    drawStrokes(collector, {
      strokes,
      clip: state.clip,
      sheet: size,
      line:
        lines && state.line !== undefined
          ? { group, shown, kind: "line", colour: state.line, width }
          : undefined,
      fill:
        fills && state.fill !== undefined ? { group, shown, kind: "fill", colour: state.fill } : undefined,
    });
  }
}

interface GroupOptions {
  readonly matrix: Matrix | null;
  readonly bbox: ArrayLike<number> | null;
  readonly smask?: unknown;
}

const strokers = [
  "stroke",
  "closeStroke",
  "fillStroke",
  "eoFillStroke",
  "closeFillStroke",
  "closeEOFillStroke",
] as const;
const fillers = [
  "fill",
  "eoFill",
  "fillStroke",
  "eoFillStroke",
  "closeFillStroke",
  "closeEOFillStroke",
] as const;

/** Nothing shows: two sides that look away from each other. */
const nothing: Clip = {
  sides: [
    [1, 0, 1e300],
    [-1, 0, 1e300],
  ],
};

const kindsOf = (op: PdfReader["OPS"]) =>
  new Map([
    [op.save!, "save"],
    [op.restore!, "restore"],
    [op.transform!, "transform"],
    [op.paintFormXObjectBegin!, "formBegin"],
    [op.paintFormXObjectEnd!, "formEnd"],
    [op.beginGroup!, "groupBegin"],
    [op.endGroup!, "groupEnd"],
    [op.beginMarkedContentProps!, "markProperties"],
    [op.beginMarkedContent!, "mark"],
    [op.endMarkedContent!, "markEnd"],
    [op.setLineWidth!, "width"],
    [op.setStrokeRGBColor!, "lineColour"],
    [op.setFillRGBColor!, "fillColour"],
    [op.setStrokeColorN!, "linePattern"],
    [op.setFillColorN!, "fillPattern"],
    [op.setStrokeTransparent!, "lineNone"],
    [op.setFillTransparent!, "fillNone"],
    [op.setGState!, "settings"],
    [op.clip!, "clip"],
    [op.eoClip!, "clip"],
    [op.constructPath!, "path"],
  ] as const);

/** Line width and transparency out of a dictionary of settings. */
const withSettings = (state: PenState, settings: unknown): PenState => {
  let next = state;
  for (const [key, value] of settings as readonly (readonly [string, unknown])[]) {
    if (key === "LW") next = { ...next, width: Number(value) };
    if (key === "CA") next = { ...next, lineAlpha: Number(value) };
    if (key === "ca") next = { ...next, fillAlpha: Number(value) };
  }
  return next;
};

/** Several outlines in one clip show the union of their insides, which their common box holds. */
const boxRing = (strokes: readonly Stroke[]): number[] => strokes.flatMap((stroke) => [...stroke.points]);
