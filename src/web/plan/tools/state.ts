import type { Metres, Point, Radians, Site } from "#engine";
import type { EditStep, RecordKind, RecordRef } from "../../contract.ts";
import type { Nearest } from "../draw-snap.ts";
import type { Guide } from "../snap.ts";
import type { Pixel, View } from "../view.ts";
import type { AddKind } from "./kinds.ts";
import type { Refusal } from "./presets/ground.ts";

export type { AddKind } from "./kinds.ts";

/** What the pointer does on the plan. */
export type Tool =
  | { readonly kind: "select" }
  | { readonly kind: "measure" }
  /** `after`: whether the tool is put away when the thing is set down, or stays in the hand for the next one. */
  | { readonly kind: "add"; readonly what: AddKind; readonly after?: "away" | "again" };

/** A grip of the selected thing. */
export type Grip =
  | { readonly kind: "turn"; readonly ref: RecordRef; readonly at: Point }
  | { readonly kind: "corner"; readonly ref: RecordRef; readonly index: number; readonly at: Point }
  | { readonly kind: "side"; readonly ref: RecordRef; readonly index: number; readonly at: Point };

/** One side of a room that was chosen. */
export interface ChosenSide {
  readonly room: string;
  readonly index: number;
}

/** The four ways along the sheet. */
export type Towards = "right" | "up" | "left" | "down";

/** A line or rectangle that is being drawn: from the first end to where the hand is. */
export interface Drawing {
  readonly on: "draw";
  readonly what: AddKind;
  readonly from: Point;
  readonly to: Point;
  readonly guides: readonly Guide[];
  /** Where the first end was pressed; a press that goes nowhere waits for a second one, or for typed figures. */
  readonly pressed: Pixel | undefined;
  readonly held: "held" | "set";
  readonly towards?: Towards;
  /** Nobody pressed: it shows what a length that is being typed would come to. */
  readonly begun?: "typed";
}

/** A room that is drawn side by side: its corners so far, and where the hand is. */
export interface Chain {
  readonly on: "chain";
  readonly points: readonly Point[];
  readonly to: Point;
  readonly guides: readonly Guide[];
  readonly towards?: Towards;
  /** Why it was not closed. */
  readonly refused?: "few" | "crossing";
}

/** What is going on between pressing and letting go. */
export type ToolState =
  /** `refused`: the last thing found no wall, or no room, to be set down in. */
  | { readonly on: "rest"; readonly refused?: Refusal["refused"] }
  | {
      readonly on: "press";
      readonly from: Pixel;
      readonly hits: readonly RecordRef[];
      readonly grip: Grip | undefined;
      readonly add: "add" | "replace";
    }
  | { readonly on: "pan"; readonly last: Pixel }
  | {
      readonly on: "move";
      readonly refs: readonly RecordRef[];
      readonly from: Point;
      readonly by: Point;
      readonly guides: readonly Guide[];
    }
  | { readonly on: "turn"; readonly ref: RecordRef; readonly by: Radians }
  | {
      readonly on: "reshape";
      readonly grip: Exclude<Grip, { kind: "turn" }>;
      readonly steps: readonly EditStep[];
      readonly guides: readonly Guide[];
      readonly at: Point;
    }
  | { readonly on: "box"; readonly from: Point; readonly to: Point }
  | Drawing
  | Chain
  | { readonly on: "measure"; readonly from: Point; readonly to: Point; readonly held: "held" | "set" };

export const rest: ToolState = { on: "rest" };

/** Something that the person did. Pixels count from the left top of the plan. */
export type Input =
  | {
      readonly do: "down";
      readonly pixel: Pixel;
      readonly shift: boolean;
      readonly pan: boolean;
      readonly touch: boolean;
    }
  | { readonly do: "drag"; readonly pixel: Pixel; readonly free: boolean }
  /** The hand moves and presses nothing. */
  | { readonly do: "hover"; readonly pixel: Pixel; readonly free: boolean }
  | { readonly do: "up"; readonly pixel: Pixel }
  | { readonly do: "double"; readonly pixel: Pixel }
  /** A length was typed, or two of them for a rectangle. */
  | { readonly do: "typed"; readonly lengths: readonly [Metres] | readonly [Metres, Metres] }
  /** A length stands in the field, not yet set down; none any more where absent. */
  | { readonly do: "tried"; readonly lengths?: readonly [Metres] | readonly [Metres, Metres] }
  | { readonly do: "towards"; readonly way: Towards }
  /** Takes back the last corner of a chain. */
  | { readonly do: "back" }
  /** Closes a chain; sets down what waits for its second end. */
  | { readonly do: "finish" }
  | { readonly do: "cancel" };

/** What the tools may look at. */
export interface Bench {
  readonly site: Site;
  readonly storey: string;
  readonly view: View;
  readonly selection: readonly RecordRef[];
  readonly tool: Tool;
  readonly grips: readonly Grip[];
  readonly readOnly: boolean;
  readonly newId: (kind: RecordKind) => string;
  /** What drawing needs; absent until it is loaded. */
  readonly drawing?: DrawingTools | undefined;
  /** Nearest place on the drawing under the plan. */
  readonly nearest?: Nearest;
}

/** What becomes of an input. */
export interface Deed {
  readonly state: ToolState;
  readonly view?: View;
  readonly select?: readonly RecordRef[];
  /** A side of the selected room was chosen. */
  readonly side?: ChosenSide;
  readonly commit?: { readonly name: string; readonly steps: readonly EditStep[] };
  readonly tool?: Tool;
}

/** What one needs only while one draws: loaded with the first tool that is taken for it. */
export interface DrawingTools {
  readonly pressed: (tool: AddTool, state: Chain | Drawing | undefined, pixel: Pixel, bench: Bench) => Deed;
  readonly moved: (
    state: Chain | Drawing,
    input: Extract<Input, { do: "drag" | "hover" }>,
    bench: Bench,
  ) => Deed;
  readonly released: (tool: AddTool, state: Chain | Drawing, pixel: Pixel, bench: Bench) => Deed;
  readonly typed: (
    tool: AddTool,
    state: Chain | Drawing | undefined,
    how: { readonly lengths: readonly [Metres] | readonly [Metres, Metres]; readonly bench: Bench },
  ) => Deed;
  readonly tried: (
    tool: AddTool,
    state: Chain | Drawing | undefined,
    how: {
      readonly lengths: readonly [Metres] | readonly [Metres, Metres] | undefined;
      readonly bench: Bench;
    },
  ) => Deed;
  readonly towards: (state: Chain | Drawing, way: Towards) => Deed;
  readonly back: (state: Chain) => Deed;
  readonly finished: (tool: AddTool, state: Chain | Drawing, bench: Bench) => Deed;
}

type AddTool = Extract<Tool, { kind: "add" }>;
