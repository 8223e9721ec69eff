import { dotsInside, hatchStrokes } from "../drawing/hatching.ts";
import { emOf, lengthOf } from "../drawing/lettering.ts";
import type { Fill, Mark, PaperPoint, PaperRing, Pen, Sheet, TextMark } from "../drawing/mark.ts";

/**
 * A sheet as SVG in millimetres: same sheet, same bytes. Coordinates are rounded here and nowhere before, to 1/100 mm.
 */
export function svgOf(sheet: Sheet): string {
  let clips = 0;
  const clipId = (): string => `clip${++clips}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(sheet.width)}mm" height="${num(sheet.height)}mm" viewBox="0 0 ${num(sheet.width)} ${num(sheet.height)}">`,
    `<title>${escaped(sheet.title)}</title>`,
    "<style>text{font-family:Inter,Arial,sans-serif;font-feature-settings:'tnum','calt' 0}</style>",
    `<rect width="${num(sheet.width)}" height="${num(sheet.height)}" fill="#FFFFFF"/>`,
    '<g stroke-linejoin="round" stroke-linecap="butt" fill="none">',
    ...sheet.marks.map((mark) => markOf(mark, clipId)),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

function markOf(mark: Mark, clipId: () => string): string {
  switch (mark.kind) {
    case "line":
      return `<path d="M${pair(mark.from)}L${pair(mark.to)}"${stroke(mark.pen)}/>`;
    case "polyline":
      return `<path d="${path(mark.points, false)}"${stroke(mark.pen)}/>`;
    case "circle":
      return `<circle cx="${num(mark.at[0])}" cy="${num(mark.at[1])}" r="${num(mark.radius)}"${mark.fill ? ` fill="${mark.fill}"` : ""}${mark.pen ? stroke(mark.pen) : ""}/>`;
    case "area": {
      const d = mark.rings.map((ring) => path(ring, true)).join("");
      return [
        ...mark.fills.map((fill) => fillOf(fill, mark.rings, d)),
        ...(mark.pen ? [`<path d="${d}"${stroke(mark.pen)}/>`] : []),
      ]
        .filter((line) => line !== "")
        .join("\n");
    }
    case "text":
      return textOf(mark);
    case "clip": {
      const id = clipId();
      const { left, top, right, bottom } = mark.within;
      return [
        `<clipPath id="${id}"><rect x="${num(left)}" y="${num(top)}" width="${num(right - left)}" height="${num(bottom - top)}"/></clipPath>`,
        `<g clip-path="url(#${id})">`,
        ...mark.marks.map((inner) => markOf(inner, clipId)),
        "</g>",
      ].join("\n");
    }
  }
}

function fillOf(fill: Fill, rings: readonly PaperRing[], d: string): string {
  switch (fill.kind) {
    case "solid":
      return `<path d="${d}" fill-rule="evenodd" fill="${fill.colour}"${fill.opacity === undefined ? "" : ` fill-opacity="${num(fill.opacity)}"`}/>`;
    case "hatch": {
      const strokes = hatchStrokes(rings, fill);
      if (strokes.length === 0) return "";
      return `<path d="${strokes.map(([a, b]) => `M${pair(a)}L${pair(b)}`).join("")}"${stroke(fill.pen)}/>`;
    }
    case "dots": {
      const dots = dotsInside(rings, fill.spacing);
      if (dots.length === 0) return "";
      return `<path d="${dots.map((dot) => `M${pair(dot)}h0`).join("")}" stroke="${fill.colour}" stroke-width="${num(2 * fill.radius)}" stroke-linecap="round"/>`;
    }
  }
}

function textOf(mark: TextMark): string {
  const anchor = mark.anchor === "start" ? "" : ` text-anchor="${mark.anchor}"`;
  const weight = mark.weight === "regular" ? "" : ' font-weight="600"';
  const turn = mark.turn
    ? ` transform="rotate(${num(-mark.turn)} ${num(mark.at[0])} ${num(mark.at[1])})"`
    : "";
  const halo = mark.halo ? ` stroke="#FFFFFF" stroke-width="${num(2 * mark.halo)}" paint-order="stroke"` : "";
  // The length is stated, so that a reader without Inter keeps every text in its place.
  const length = num(lengthOf(mark.text, mark.size, mark.weight));
  return `<text x="${num(mark.at[0])}" y="${num(mark.at[1])}" font-size="${num(emOf(mark.size))}" fill="${mark.colour}"${anchor}${weight}${halo}${turn} textLength="${length}" lengthAdjust="spacingAndGlyphs">${escaped(mark.text)}</text>`;
}

const stroke = (pen: Pen): string =>
  ` stroke="${pen.colour}" stroke-width="${num(pen.width)}"${
    pen.dash
      ? ` stroke-dasharray="${pen.dash.map(num).join(" ")}"${pen.dash[0]! <= 0.3 ? ' stroke-linecap="round"' : ""}`
      : ""
  }`;

const path = (ring: PaperRing, closed: boolean): string =>
  ring.map((point, i) => `${i === 0 ? "M" : "L"}${pair(point)}`).join("") + (closed ? "Z" : "");

const pair = (point: PaperPoint): string => `${num(point[0])} ${num(point[1])}`;

/** Rounded to 1/100, without trailing zeros or a negative nought. */
function num(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 forbids these letters, escaped or not
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "�")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");
