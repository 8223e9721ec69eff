import {
  type FloorPiece,
  flightEdge,
  type Interference,
  type Luminaire,
  type Obstacle,
  type Point,
  type Said,
  say,
  unreachable,
} from "#engine";
import { colourOf, hairline, ink, muted, paper, type Variant } from "./ink.ts";
import type { Mark, Pen } from "./mark.ts";
import { onPaper, type Projection, paperLength, ringOnPaper } from "./projection.ts";

/** An obstacle as a cut or seen from above; what begins over head height is dashed. */
export function obstacleMarks(obstacle: Obstacle, projection: Projection): readonly Mark[] {
  const rings = [ringOnPaper(obstacle.footprint, projection)];
  const overhead = obstacle.base >= 1.9;
  const glass = obstacle.kind === "glass";
  const solid = obstacle.kind === "column" || obstacle.kind === "partition" || obstacle.kind === "cubicle";
  return [
    {
      kind: "area",
      rings,
      fills: overhead ? [] : [{ kind: "solid", colour: glass ? paper : solid ? hairline : "#ECEDEF" }],
      pen: { width: 0.25, colour: ink, ...(overhead ? { dash: [2, 1.2] } : {}) },
    },
  ];
}

/** A landing's edge, or a flight with its steps and an arrow that points upwards. */
export function floorPieceMarks(piece: FloorPiece, projection: Projection): readonly Mark[] {
  const thin: Pen = { width: 0.25, colour: muted };
  const edge: Mark = {
    kind: "area",
    rings: [ringOnPaper(piece.footprint, projection)],
    fills: [],
    pen: thin,
  };
  if (piece.kind === "landing") return [edge];
  const foot = flightEdge(piece, "foot");
  const head = flightEdge(piece, "head");
  const rise = Math.abs(piece.high - piece.low);
  // The number of steps is not surveyed; 175 mm is a usual rise. They show which way one walks, nothing more.
  const steps = Math.max(2, Math.round(rise / 0.175));
  const [headStart, headEnd] = sameSense(foot, head) ? head : [head[1], head[0]];
  const along = (a: Point, b: Point, share: number) => onPaper(part(a, b, share), projection);
  const treads = Array.from({ length: steps - 1 }, (_, i): Mark => {
    const share = (i + 1) / steps;
    return {
      kind: "line",
      from: along(foot[0], headStart, share),
      to: along(foot[1], headEnd, share),
      pen: { width: 0.18, colour: muted },
    };
  });
  const start = onPaper(part(part(foot[0], foot[1], 0.5), part(headStart, headEnd, 0.5), 0.06), projection);
  const end = onPaper(part(part(foot[0], foot[1], 0.5), part(headStart, headEnd, 0.5), 0.94), projection);
  const angle = Math.atan2(end[1] - start[1], end[0] - start[0]);
  const barb = (turn: number): readonly [number, number] => [
    end[0] - 2 * Math.cos(angle + turn),
    end[1] - 2 * Math.sin(angle + turn),
  ];
  return [
    edge,
    ...treads,
    { kind: "line", from: start, to: end, pen: { width: 0.35, colour: ink } },
    { kind: "polyline", points: [barb(0.4), end, barb(-0.4)], pen: { width: 0.35, colour: ink } },
    { kind: "circle", at: start, radius: 0.6, fill: paper, pen: { width: 0.35, colour: ink } },
  ];
}

/** The place of one who stays: a small cross in a thin ring of its radius. */
export function dwellPlaceMarks(
  place: { readonly at: Point; readonly radius: number },
  projection: Projection,
): readonly Mark[] {
  const at = onPaper(place.at, projection);
  const pen: Pen = { width: 0.18, colour: muted };
  return [
    { kind: "circle", at, radius: paperLength(place.radius, projection), pen },
    { kind: "line", from: [at[0] - 0.8, at[1]], to: [at[0] + 0.8, at[1]], pen },
    { kind: "line", from: [at[0], at[1] - 0.8], to: [at[0], at[1] + 0.8], pen },
  ];
}

export function luminaireMarks(luminaire: Luminaire, projection: Projection): readonly Mark[] {
  const pen: Pen = { width: 0.18, colour: muted };
  const cos = Math.cos(luminaire.turn);
  const sin = Math.sin(luminaire.turn);
  const corner = (u: number, v: number): Point => [
    luminaire.at[0] + u * cos - v * sin,
    luminaire.at[1] + u * sin + v * cos,
  ];
  const [l, w] = [luminaire.length / 2, luminaire.width / 2];
  const ring = ringOnPaper([corner(-l, -w), corner(l, -w), corner(l, w), corner(-l, w)], projection);
  return [
    { kind: "area", rings: [ring], fills: [{ kind: "solid", colour: paper }], pen },
    { kind: "line", from: ring[0]!, to: ring[2]!, pen },
    { kind: "line", from: ring[1]!, to: ring[3]!, pen },
  ];
}

/** A triangle at a source of false triggering: filled when a detector sees it, empty when none does. */
export function interferenceMarks(
  source: Interference,
  sign: { readonly seen: boolean; readonly variant: Variant; readonly projection: Projection },
): readonly Mark[] {
  const at = onPaper(source.at, sign.projection);
  const colour = colourOf("interference", sign.variant);
  const pen: Pen = { width: 0.35, colour };
  const corner = (turn: number): readonly [number, number] => [
    at[0] + 2 * Math.sin((turn * Math.PI) / 180),
    at[1] - 2 * Math.cos((turn * Math.PI) / 180),
  ];
  const line: readonly Mark[] = source.to
    ? [{ kind: "line", from: at, to: onPaper(source.to, sign.projection), pen: { ...pen, dash: [1.2, 0.8] } }]
    : [];
  return [
    ...line,
    {
      kind: "area",
      rings: [[corner(0), corner(120), corner(240)]],
      fills: [{ kind: "solid", colour: sign.seen ? colour : paper }],
      pen,
    },
  ];
}

/** The trade's word for a source of false triggering. */
export function interferenceWord(source: Interference): Said {
  switch (source.kind) {
    case "heater":
      return say`heater`;
    case "air-outlet":
      return say`air outlet`;
    case "machine":
      return say`machine`;
    case "sunlit-window":
      return say`sunlit window`;
    case "door-curtain":
      return say`air curtain`;
    default:
      return unreachable(source.kind);
  }
}

const part = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];

const sameSense = (a: readonly [Point, Point], b: readonly [Point, Point]): boolean =>
  (a[1][0] - a[0][0]) * (b[1][0] - b[0][0]) + (a[1][1] - a[0][1]) * (b[1][1] - b[0][1]) >= 0;
