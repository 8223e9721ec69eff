import {
  distinct,
  joined,
  type SourceId,
  type Supply,
  say,
  shortSourceTitle,
  sources,
  type Words,
} from "#engine";
import { frameBox, type Paper } from "../drawing/frame.ts";
import { ink, muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Mark } from "../drawing/mark.ts";
import { corners, type SheetTitle, titleBlock, titleBlockSize } from "../drawing/title-block.ts";
import { cautionMarks } from "./caution-band.ts";
import { words } from "./symbols.ts";

/** Which of the sources behind a sheet are to be verified, as the one line that it prints; undefined where all are sure. */
export function verifyWords(used: readonly SourceId[]): Words | undefined {
  const unsure = [...new Set(used)].filter((id) => sources[id].verify);
  if (unsure.length === 0) return undefined;
  const titles = joined(distinct(unsure.map(shortSourceTitle)), "; ");
  return say`Verify, not read in the text itself: ${titles}.`;
}

/** Frame, caution and title block of a wiring sheet that is not to scale, with its notes above the lower edge on the left. */
export function sheetFrame(sheet: {
  readonly paper: Paper;
  readonly title: SheetTitle;
  /** Absent where no work is done by the sheet. */
  readonly supply?: Supply;
  readonly notes: readonly Words[];
}): readonly Mark[] {
  const frame = frameBox(sheet.paper);
  const strip = { top: frame.bottom - titleBlockSize[1], right: frame.right - titleBlockSize[0] };
  const lines = sheet.notes.flatMap((note) =>
    broken(sheet.title.speak(note), strip.right - frame.left - 8, 2.5),
  );
  return [
    { kind: "area", rings: [corners(frame)], fills: [], pen: { width: 0.5, colour: ink } },
    {
      kind: "line",
      from: [frame.left, strip.top],
      to: [strip.right, strip.top],
      pen: { width: 0.35, colour: ink },
    },
    ...lines.map((text, i) =>
      words([frame.left + 4, frame.bottom - 3 - (lines.length - 1 - i) * 3.7], text, { colour: muted }),
    ),
    ...titleBlock([frame.right, frame.bottom], {
      ...sheet.title,
      scale: sheet.title.speak(say`not to scale (${sheet.paper})`),
    }),
    ...(sheet.supply ? cautionMarks(sheet.supply, { frame, speak: sheet.title.speak }) : []),
  ];
}
