import type { Words } from "#engine";
import type { Variant } from "./ink.ts";
import { ink, muted } from "./ink.ts";
import { type LegendKey, legend } from "./legend.ts";
import { broken } from "./lettering.ts";
import type { Box, Mark, Millimetres } from "./mark.ts";
import { scaleBar } from "./scale-bar.ts";
import { corners, type SheetTitle, titleBlock, titleBlockSize } from "./title-block.ts";

/** Landscape sheets. Left edge 20 mm for the file, the others 10 mm, as ISO 5457 has it. */
export const papers = { A3: [420, 297], A4: [297, 210] } as const;
export type Paper = keyof typeof papers;

/** The sheet inside its edges. */
export function frameBox(paper: Paper): Box {
  const [width, height] = papers[paper];
  return { left: 20, top: 10, right: width - 10, bottom: height - 10 };
}

/** Where the drawing goes: above the strip with legend and title block. */
export function drawingBox(paper: Paper, strip: Millimetres = titleBlockSize[1]): Box {
  const frame = frameBox(paper);
  return { ...frame, bottom: frame.bottom - strip };
}

/** Frame, title block low right, legend and scale bar to the left of it, and the notes under which the drawing was made. */
export function frameMarks(sheet: {
  readonly paper: Paper;
  readonly title: SheetTitle;
  readonly scale: number;
  readonly shown: ReadonlySet<LegendKey>;
  readonly notes: readonly Words[];
  readonly variant: Variant;
  /** Line above the legend; a taller strip draws its own. */
  readonly topLine?: "drawn" | "none";
}): readonly Mark[] {
  const frame = frameBox(sheet.paper);
  const strip = { ...frame, top: frame.bottom - titleBlockSize[1], right: frame.right - titleBlockSize[0] };
  const bar = { left: strip.left + 5, top: strip.bottom - 5.5 };
  const notesWidth = strip.right - bar.left - 100 - 14;
  const { speak } = sheet.title;
  const lines = notesWidth > 30 ? sheet.notes.flatMap((note) => broken(speak(note), notesWidth, 2.5)) : [];
  // Two lines beside the bar; more find room above them.
  const firstNote = bar.top - 1.2 - 3.9 * Math.max(0, lines.length - 2);
  return [
    { kind: "area", rings: [corners(frame)], fills: [], pen: { width: 0.5, colour: ink } },
    ...(sheet.topLine === "none" ? [] : [topLine(strip)]),
    ...legend(sheet.shown, {
      box: { left: strip.left + 4, top: strip.top + 3.5, right: strip.right - 2, bottom: strip.bottom - 12 },
      variant: sheet.variant,
      speak,
    }),
    ...scaleBar([bar.left, bar.top], { scale: sheet.scale, speak }),
    ...lines.map(
      (line, i): Mark => ({
        kind: "text",
        at: [bar.left + 110, firstNote + i * 3.9],
        text: line,
        size: 2.5,
        anchor: "start",
        weight: "regular",
        colour: muted,
      }),
    ),
    ...titleBlock([frame.right, frame.bottom], {
      ...sheet.title,
      scale: `1 : ${sheet.scale} (${sheet.paper})`,
    }),
  ];
}

const topLine = (strip: Box): Mark => ({
  kind: "line",
  from: [strip.left, strip.top],
  to: [strip.right, strip.top],
  pen: { width: 0.35, colour: ink },
});
