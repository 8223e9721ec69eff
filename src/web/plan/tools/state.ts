import type { Point, Radians, Site } from "#engine";
import type { EditStep, RecordKind, RecordRef } from "../../contract.ts";
import type { Guide } from "../snap.ts";
import type { Pixel, View } from "../view.ts";

/** What the pointer does on the plan. */
export type Tool =
  | { readonly kind: "select" }
  | { readonly kind: "measure" }
  | { readonly kind: "add"; readonly what: AddKind };

export type AddKind =
  | "room"
  | "door"
  | "passage"
  | "window"
  | "glazing"
  | "obstacle"
  | "dwellPlace"
  | "source"
  | "luminaire"
  | "ceilingThing"
  | "detector";

/** A grip of the selected thing. */
export type Grip =
  | { readonly kind: "turn"; readonly ref: RecordRef; readonly at: Point }
  | { readonly kind: "corner"; readonly ref: RecordRef; readonly index: number; readonly at: Point }
  | { readonly kind: "side"; readonly ref: RecordRef; readonly index: number; readonly at: Point };

/** What is going on between pressing and letting go. */
export type ToolState =
  | { readonly on: "rest" }
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
  | { readonly on: "draw"; readonly what: AddKind; readonly from: Point; readonly to: Point }
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
  | { readonly do: "up"; readonly pixel: Pixel }
  | { readonly do: "double"; readonly pixel: Pixel }
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
}

/** What becomes of an input. */
export interface Deed {
  readonly state: ToolState;
  readonly view?: View;
  readonly select?: readonly RecordRef[];
  readonly commit?: { readonly name: string; readonly steps: readonly EditStep[] };
  readonly tool?: Tool;
}
