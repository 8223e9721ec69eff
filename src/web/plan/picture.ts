import type { Detector, Finding, Site } from "#engine";
import type { Calculated, EditStep, RecordRef, Underlay } from "../contract.ts";
import type { Units } from "../texts/index.ts";
import type { PaintDrawing, Planned } from "./paint/handles.ts";
import type { Palette } from "./paint/palette.ts";
import type { Shown } from "./paint/zones.ts";
import type { ChosenSide, Grip, ToolState } from "./tools/state.ts";
import type { Insets, View } from "./view.ts";
import type { Wires } from "./wires.ts";

/** All that the picture depends on. */
export interface Picture {
  readonly site: Site;
  readonly storey: string;
  readonly underlays: readonly Underlay[];
  readonly view: View;
  readonly units: Units;
  readonly palette: Palette;
  readonly shown: Shown;
  /** The wiring, in its stage. */
  readonly wires: Wires | undefined;
  readonly calculated: Calculated;
  readonly selection: readonly RecordRef[];
  readonly toolState: ToolState;
  readonly preview: readonly EditStep[];
  /** What the drag that goes on changes; undefined while nothing is dragged. */
  readonly held: Held | undefined;
  readonly grips: readonly Grip[];
  /** The side of the selected room whose length may be typed. */
  readonly side: ChosenSide | undefined;
  readonly planned: Planned | undefined;
  /** A layout on show instead of the room's own devices. */
  readonly tried: { readonly room: string; readonly devices: readonly Detector[] } | undefined;
  readonly flags: readonly Flag[];
  /** Rooms that the selection is about; the same set as long as it is about the same rooms. */
  readonly focus: ReadonlySet<string>;
  readonly insets: Insets;
  /** Paints what is being drawn; absent until it is loaded. */
  readonly drawing?: { readonly paint: PaintDrawing } | undefined;
}

/** What a drag of detectors changes: all else keeps its picture while it lasts. */
export interface Held {
  readonly devices: ReadonlySet<string>;
  readonly rooms: ReadonlySet<string>;
}

export interface Flag {
  readonly number: number;
  readonly severity: Finding["severity"];
  readonly at: readonly [number, number];
  readonly current: boolean;
}
