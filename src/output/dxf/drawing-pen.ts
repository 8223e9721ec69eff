import { type DxfWriter, LWPolylineFlags, point3d, TextHorizontalAlignment } from "@tarikjabiri/dxf";
import { degreesOf, type Outline, type Point } from "#engine";

/** Layers of the drawing, with their colour in the index of the format: 7 is the ink of the paper. */
export const layers = {
  WALLS: 7,
  DOORS: 4,
  WINDOWS: 4,
  NAMES: 7,
  FURNITURE: 8,
  STAIRS: 8,
  LUMINAIRES: 2,
  SWITCHES: 6,
  "DISTRIBUTION BOARDS": 6,
  "DETECTOR ZONES SEATED": 3,
  "DETECTOR ZONES TOWARDS": 5,
  "DETECTOR ZONES ACROSS": 5,
  "DETECTOR ZONES SOUND": 6,
  "CABLES SUPPLY": 1,
  "CABLES SWITCHED": 30,
  "CABLES BOTH": 1,
  "CABLES BUTTON": 6,
  DETECTORS: 5,
  "DETECTOR TAGS": 5,
} as const;

export type Layer = keyof typeof layers;

export interface DrawingPen {
  readonly line: (layer: Layer, from: Point, to: Point) => void;
  readonly ring: (layer: Layer, outline: Outline) => void;
  readonly path: (layer: Layer, points: readonly Point[]) => void;
  readonly circle: (layer: Layer, at: Point, radius: number) => void;
  readonly arc: (
    layer: Layer,
    at: Point,
    arc: { readonly radius: number; readonly from: number; readonly to: number },
  ) => void;
  readonly text: (layer: Layer, at: Point, words: string, height: number) => void;
}

/** Draws onto layers of a drawing in metres. */
export function penOn(drawing: DxfWriter): DrawingPen {
  const place = ([x, y]: Point) => point3d(settled(x), settled(y));
  return {
    line: (layerName, from, to) => drawing.addLine(place(from), place(to), { layerName }),
    ring: (layerName, outline) =>
      drawing.addLWPolyline(
        outline.map((point) => ({ point: { x: settled(point[0]), y: settled(point[1]) } })),
        { flags: LWPolylineFlags.Closed, layerName },
      ),
    path: (layerName, points) =>
      drawing.addLWPolyline(
        points.map((point) => ({ point: { x: settled(point[0]), y: settled(point[1]) } })),
        { layerName },
      ),
    circle: (layerName, at, radius) => drawing.addCircle(place(at), settled(radius), { layerName }),
    arc: (layerName, at, { radius, from, to }) =>
      drawing.addArc(place(at), settled(radius), settled(degreesOf(from)), settled(degreesOf(to)), {
        layerName,
      }),
    text: (layerName, at, words, height) =>
      drawing.addText(place(at), height, words, {
        layerName,
        secondAlignmentPoint: place(at),
        horizontalAlignment: TextHorizontalAlignment.Center,
      }),
  };
}

/** Tenths of a millimetre, and of a millidegree: far below what a drawing shows. */
export const settled = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
