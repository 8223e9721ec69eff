import { joined, say, type Words } from "#engine";
import { ink, paper } from "../drawing/ink.ts";
import { broken, fitted } from "../drawing/lettering.ts";
import type { Box, Mark, Millimetres } from "../drawing/mark.ts";
import { corners } from "../drawing/title-block.ts";

/** What is known of asbestos in the building, as the job has it: absent is not asked. */
export interface AsbestosKnown {
  readonly asbestosRegister?: "none" | "seen" | "not-seen";
  readonly asbestosRemark?: string;
}

const unasked = say`Asbestos: nobody has asked for the register yet. Do not drill until it was seen, or it is certain that the building holds none.`;
const unseen = say`Asbestos: the register was not seen. Do not drill until it was seen, or it is certain that the building holds none.`;

/** What whoever drills must know of asbestos first; undefined where the building holds none and nothing was remarked. */
export function asbestosWords({ asbestosRegister, asbestosRemark }: AsbestosKnown): Words | undefined {
  const remark = (asbestosRemark ?? "").replace(/\s+/g, " ").trim();
  switch (asbestosRegister) {
    case undefined:
      return remark === "" ? unasked : joined([unasked, remark], " ");
    case "not-seen":
      return remark === "" ? unseen : joined([unseen, remark], " ");
    case "seen":
      return remark === "" ? undefined : say`Asbestos register seen: ${remark}`;
    case "none":
      return remark === "" ? undefined : say`Asbestos: ${remark}`;
  }
}

const size = 3.5;
const lineHeight: Millimetres = 5.5;
const edge: Millimetres = 4;
/** More than this is a report of its own; the last line then ends in "…". */
const mostLines = 4;

/** Height of the band across the top of a sheet: nothing where there is nothing to warn of. */
export function bandHeight(words: string | undefined, frame: Box): Millimetres {
  return words === undefined ? 0 : linesOf(words, frame).length * lineHeight + 3;
}

/** The band itself, framed heavily so that it is read first and survives a copier. */
export function bandMarks(words: string | undefined, frame: Box): readonly Mark[] {
  if (words === undefined) return [];
  const box = { ...frame, bottom: frame.top + bandHeight(words, frame) };
  return [
    {
      kind: "area",
      rings: [corners(box)],
      fills: [{ kind: "solid", colour: paper }],
      pen: { width: 0.7, colour: ink },
    },
    ...linesOf(words, frame).map(
      (text, i): Mark => ({
        kind: "text",
        at: [box.left + edge, box.top + 5.8 + i * lineHeight],
        text: i === 0 ? `! ${text}` : text,
        size,
        anchor: "start",
        weight: "semibold",
        colour: ink,
      }),
    ),
  ];
}

function linesOf(words: string, frame: Box): readonly string[] {
  // Semibold letters run some 7 % wider than the regular ones that lines are broken by; the sign in front takes 4 mm.
  const width = frame.right - frame.left - 2 * edge - 4;
  const lines = broken(words, width / 1.07, size);
  const shown =
    lines.length > mostLines ? [...lines.slice(0, mostLines - 1), `${lines[mostLines - 1]} …`] : lines;
  return shown.map((line) => fitted(line, width, { size, weight: "semibold" }));
}
