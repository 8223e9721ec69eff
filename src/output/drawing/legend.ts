import { type Said, say } from "#engine";
import type { Speak } from "../words/speak.ts";
import { detectorMarks } from "./detector-mark.ts";
import { colourOf, hairline, ink, lookOf, muted, paper, type Variant } from "./ink.ts";
import { columnWidths, leftsOf } from "./legend-columns.ts";
import { fitted } from "./lettering.ts";
import type { Box, Mark, PaperRing } from "./mark.ts";
import { wavy } from "./zone-marks.ts";

/** Everything that a sheet can show and a legend can explain. */
export type LegendKey =
  | "detector"
  | "hearing-detector"
  | "seated"
  | "towards"
  | "across"
  | "sound"
  | "gap"
  | "spill"
  | "interference"
  | "interference-seen"
  | "dark-walk"
  | "dwell-place"
  | "obstacle"
  | "overhead"
  | "luminaire"
  | "flight"
  | "grid"
  | "wall-letter";

const words: Readonly<Record<LegendKey, Said>> = {
  detector: say`detector, notch: turn`,
  "hearing-detector": say`detector that hears`,
  seated: say`sitting still seen`,
  towards: say`walking towards seen`,
  across: say`walking across seen`,
  sound: say`heard`,
  gap: say`gap: nobody seen`,
  spill: say`spill: next door seen`,
  interference: say`may trigger falsely`,
  "interference-seen": say`in sight: will trigger`,
  "dark-walk": say`dark as far as the tick`,
  "dwell-place": say`place where one stays`,
  obstacle: say`obstacle, top in m`,
  overhead: say`overhead, underside`,
  luminaire: say`luminaire`,
  flight: say`flight, arrow is up`,
  grid: say`ceiling grid`,
  "wall-letter": say`measured from here`,
};

const order = Object.keys(words) as readonly LegendKey[];

/** Explains what is on the sheet, and nothing else, in columns of a box. */
export function legend(
  shown: ReadonlySet<LegendKey>,
  drawn: { readonly box: Box; readonly variant: Variant; readonly speak: Speak },
): readonly Mark[] {
  const { box, variant, speak } = drawn;
  const rowHeight = 6.4;
  const rows = Math.max(1, Math.floor((box.bottom - box.top) / rowHeight));
  const keys = order.filter((key) => shown.has(key));
  const texts = keys.map((key) => speak(words[key]));
  const widths = columnWidths(texts, rows, { room: box.right - box.left, beside: 13.5, most: 66 });
  const lefts = leftsOf(widths, box.left);
  return keys.flatMap((key, i): readonly Mark[] => {
    const column = Math.floor(i / rows);
    const left = lefts[column]!;
    const top = box.top + (i % rows) * rowHeight;
    return [
      ...swatch(key, { left, top, right: left + 9, bottom: top + 4.6 }, variant),
      {
        kind: "text",
        at: [left + 11, top + 3.5],
        text: fitted(texts[i]!, widths[column]! - 12, { size: 2.5 }),
        size: 2.5,
        anchor: "start",
        weight: "regular",
        colour: ink,
      },
    ];
  });
}

function swatch(key: LegendKey, box: Box, variant: Variant): readonly Mark[] {
  const ring: PaperRing = [
    [box.left, box.top],
    [box.right, box.top],
    [box.right, box.bottom],
    [box.left, box.bottom],
  ];
  const middle = [(box.left + box.right) / 2, (box.top + box.bottom) / 2] as const;
  switch (key) {
    case "detector":
    case "hearing-detector":
      return detectorMarks(middle, { turn: 0, hears: key === "hearing-detector" });
    case "seated":
    case "towards":
    case "across":
    case "gap":
    case "spill": {
      const look = lookOf(key, variant);
      return [{ kind: "area", rings: [ring], fills: look.fills, pen: look.edge }];
    }
    case "sound":
      return [{ kind: "area", rings: [wavy(ring)], fills: [], pen: lookOf("sound", variant).edge }];
    case "interference":
    case "interference-seen": {
      const colour = colourOf("interference", variant);
      const corner = (turn: number): readonly [number, number] => [
        middle[0] + 2 * Math.sin((turn * Math.PI) / 180),
        middle[1] + 0.4 - 2 * Math.cos((turn * Math.PI) / 180),
      ];
      return [
        {
          kind: "area",
          rings: [[corner(0), corner(120), corner(240)]],
          fills: [{ kind: "solid", colour: key === "interference-seen" ? colour : paper }],
          pen: { width: 0.35, colour },
        },
      ];
    }
    case "dark-walk":
      return [
        {
          kind: "line",
          from: [box.left, middle[1]],
          to: [box.right - 1.5, middle[1]],
          pen: { width: 0.5, colour: ink },
        },
        {
          kind: "line",
          from: [box.right - 1.5, middle[1] - 1.5],
          to: [box.right - 1.5, middle[1] + 1.5],
          pen: { width: 0.5, colour: ink },
        },
      ];
    case "dwell-place": {
      const pen = { width: 0.18, colour: muted } as const;
      return [
        { kind: "circle", at: middle, radius: 2.2, pen },
        { kind: "line", from: [middle[0] - 0.8, middle[1]], to: [middle[0] + 0.8, middle[1]], pen },
        { kind: "line", from: [middle[0], middle[1] - 0.8], to: [middle[0], middle[1] + 0.8], pen },
      ];
    }
    case "obstacle":
      return [
        {
          kind: "area",
          rings: [ring],
          fills: [{ kind: "solid", colour: "#ECEDEF" }],
          pen: { width: 0.25, colour: ink },
        },
      ];
    case "overhead":
      return [{ kind: "area", rings: [ring], fills: [], pen: { width: 0.25, colour: ink, dash: [2, 1.2] } }];
    case "luminaire": {
      const pen = { width: 0.18, colour: muted } as const;
      return [
        { kind: "area", rings: [ring], fills: [], pen },
        { kind: "line", from: ring[0]!, to: ring[2]!, pen },
        { kind: "line", from: ring[1]!, to: ring[3]!, pen },
      ];
    }
    case "flight":
      return [
        {
          kind: "line",
          from: [box.left, middle[1]],
          to: [box.right, middle[1]],
          pen: { width: 0.35, colour: ink },
        },
        {
          kind: "polyline",
          points: [
            [box.right - 1.8, middle[1] - 0.8],
            [box.right, middle[1]],
            [box.right - 1.8, middle[1] + 0.8],
          ],
          pen: { width: 0.35, colour: ink },
        },
      ];
    case "grid": {
      const pen = { width: 0.18, colour: hairline } as const;
      return [0, 3, 6, 9].map(
        (x): Mark => ({
          kind: "line",
          from: [box.left + x, box.top],
          to: [box.left + x, box.bottom],
          pen,
        }),
      );
    }
    case "wall-letter":
      return [
        { kind: "circle", at: middle, radius: 2.2, fill: paper, pen: { width: 0.25, colour: ink } },
        {
          kind: "text",
          at: [middle[0], middle[1] + 0.95],
          text: "a",
          size: 2.5,
          anchor: "middle",
          weight: "regular",
          colour: ink,
        },
      ];
  }
}
