import type { Site } from "#engine";
import type { DeviceZones, EditStep } from "../contract.ts";
import type { DrawnSpoken } from "../texts/drawn.ts";
import type { DrawnCoverage } from "./drawn-results.ts";
import type { Frame } from "./paint/frame.ts";
import type { Painted } from "./picture.ts";
import type { View } from "./view.ts";

/** To the worker that paints the plan. */
export type PaintQuestion =
  /** The canvases that it paints to itself: what the hand moves. */
  /** What the screens speak, where that is not English: before anything is painted. */
  | { readonly ask: "speak"; readonly spoken: DrawnSpoken }
  | { readonly ask: "canvases"; readonly zones: OffscreenCanvas; readonly signs: OffscreenCanvas }
  | { readonly ask: "picture"; readonly change: PictureChange };

/** What differs in a picture from the one that was sent before. */
export interface PictureChange {
  /** Device pixels for one CSS pixel. */
  readonly density: number;
  readonly site?: SiteChange;
  readonly results?: ResultsChange;
  /** All else that changed, as it is now. */
  readonly fields: Partial<Omit<Painted, "site" | "calculated">>;
}

/** The whole site, or what leads from the one before to this one. */
export type SiteChange =
  | { readonly whole: Site }
  | { readonly steps: readonly EditStep[]; readonly defaults?: Site["defaults"] };

/** Results that are new, and the ids of those that are gone. */
export interface ResultsChange {
  readonly zones: readonly (readonly [string, DeviceZones])[];
  readonly rooms: readonly (readonly [string, DrawnCoverage])[];
  readonly gone: { readonly zones: readonly string[]; readonly rooms: readonly string[] };
}

/** Layers that are painted as pictures; the page shows each when it comes, in the place for which it was painted. */
export type PictureLayer = "base" | "zones" | "words" | "signs";

export type PaintAnswer =
  | {
      readonly tell: "painted";
      readonly layer: PictureLayer;
      /** Undefined: nothing is on the layer. */
      readonly bitmap: ImageBitmap | undefined;
      readonly view: View;
    }
  /** Where the canvases of what the hand moves lie. */
  | { readonly tell: "held"; readonly layer: "zones" | "signs"; readonly frame: Frame; readonly view: View }
  | { readonly tell: "failed" };
