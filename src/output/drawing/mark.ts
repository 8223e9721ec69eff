/** Length on paper. [mm] */
export type Millimetres = number;

/** A place on the sheet, x right and y down from the upper left corner. [mm] */
export type PaperPoint = readonly [x: Millimetres, y: Millimetres];

export type PaperRing = readonly PaperPoint[];

/** Line widths of the sheet: walls, openings and devices, zones and thin lines, hatching. */
export type LineWidth = 0.7 | 0.5 | 0.35 | 0.25 | 0.18;

export interface Pen {
  readonly width: LineWidth;
  readonly colour: string;
  /** Lengths of strokes and spaces; solid if absent. [mm] */
  readonly dash?: readonly Millimetres[];
}

export type Fill =
  | { readonly kind: "solid"; readonly colour: string; readonly opacity?: number }
  /** Parallel lines, counter-clockwise angle from +x as one sees it; "crossed" adds the perpendicular set. */
  | {
      readonly kind: "hatch";
      readonly angle: number;
      readonly spacing: Millimetres;
      readonly crossed: boolean;
      readonly pen: Pen;
    }
  | {
      readonly kind: "dots";
      readonly spacing: Millimetres;
      readonly radius: Millimetres;
      readonly colour: string;
    };

/** Lettering by height of capitals, as ISO 3098 names it. */
export type LetteringSize = 2.5 | 3.5 | 5 | 7;

export interface TextMark {
  readonly kind: "text";
  /** On the baseline, at the anchor. */
  readonly at: PaperPoint;
  readonly text: string;
  readonly size: LetteringSize;
  readonly anchor: "start" | "middle" | "end";
  readonly weight: "regular" | "semibold";
  readonly colour: string;
  /** Counter-clockwise turn of the baseline. [°] */
  readonly turn?: number;
  /** Width of the clear rim that keeps lines from touching the letters. [mm] */
  readonly halo?: Millimetres;
}

/** The few kinds of mark that screen, SVG, PDF and DXF all draw. */
export type Mark =
  | { readonly kind: "line"; readonly from: PaperPoint; readonly to: PaperPoint; readonly pen: Pen }
  | { readonly kind: "polyline"; readonly points: PaperRing; readonly pen: Pen }
  /** Rings under the even-odd rule, filled with each fill in turn, then outlined. */
  | {
      readonly kind: "area";
      readonly rings: readonly PaperRing[];
      readonly fills: readonly Fill[];
      readonly pen?: Pen;
    }
  | {
      readonly kind: "circle";
      readonly at: PaperPoint;
      readonly radius: Millimetres;
      readonly fill?: string;
      readonly pen?: Pen;
    }
  | TextMark
  /** Marks seen through a rectangle. */
  | { readonly kind: "clip"; readonly within: Box; readonly marks: readonly Mark[] };

export interface Box {
  readonly left: Millimetres;
  readonly top: Millimetres;
  readonly right: Millimetres;
  readonly bottom: Millimetres;
}

/** A finished drawing: marks on a sheet of known size. Same drawing, same bytes from every writer. */
export interface Sheet {
  readonly name: string;
  readonly title: string;
  readonly width: Millimetres;
  readonly height: Millimetres;
  /** Denominator of the scale: 50 is 1 : 50. Absent on sheets that are not to scale. */
  readonly scale?: number;
  readonly marks: readonly Mark[];
}
