import type { Detector, Finding, Site } from "#engine";
import type { EditStep, RecordRef, Underlay } from "../contract.ts";
import type { Units } from "../texts/index.ts";
import type { DrawnResults } from "./drawn-results.ts";
import type { Planned } from "./paint/handles.ts";
import type { Palette } from "./paint/palette.ts";
import type { Shown } from "./paint/zones.ts";
import type { ChosenSide, Grip, ToolState } from "./tools/state.ts";
import type { Insets, View } from "./view.ts";
import type { WalkMarks } from "./walks.ts";
import type { Wires } from "./wires.ts";

/** All that the picture depends on. */
export interface Picture extends Painted {
  readonly underlays: readonly Underlay[];
}

/** What the worker that paints has to know. All of it can be sent: no functions. */
export interface Painted {
  readonly site: Site;
  readonly storey: string;
  readonly view: View;
  readonly units: Units;
  readonly palette: Palette;
  readonly shown: Shown;
  /** The wiring, in its stage. */
  readonly wires: Wires | undefined;
  /** The stations of a walk test. */
  readonly walk: WalkMarks | undefined;
  readonly calculated: DrawnResults;
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
  /** Rooms that a simulated day shows lit. */
  readonly lit: readonly string[] | undefined;
  readonly flags: readonly Flag[];
  /** Rooms that the selection is about; the same set as long as it is about the same rooms. */
  readonly focus: ReadonlySet<string>;
  readonly insets: Insets;
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
