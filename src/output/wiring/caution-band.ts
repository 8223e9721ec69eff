import { joined, type Said, type Supply, say } from "#engine";
import { ink, paper } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Box, Mark, Millimetres } from "../drawing/mark.ts";
import { corners } from "../drawing/title-block.ts";
import type { Speak } from "../words/speak.ts";

const fiveSteps = say`In order: disconnect completely; secure against reconnection (lock and tag); prove dead; earth and short-circuit where the installation can become live from elsewhere; cover or fence off live parts near by (the five steps of EN 50110-1, in this order); where the job's region has another sequence, that one holds.`;
const american = say`In order: prepare; shut down; isolate every source; lock and tag; release stored energy (drivers keep a charge); verify dead; where the job's region has another sequence, that one holds.`;

/** What every page of the wiring says before anything else, sentence by sentence. */
export const cautions = ({ region }: Pick<Supply, "region">): readonly Said[] => [
  say`Work by licensed persons only, under local rules.`,
  say`Before a cover is opened: every supply of the group disconnected, locked and tagged, then proved dead at the point of work with a tester that was itself proved before and after, all conductors in all combinations (also L′: a dark lamp proves nothing).`,
  region === "US" ? american : fiveSteps,
  say`No power back while a test link is still in.`,
  say`A detector's contact is not a means of isolation.`,
  say`Never rely on presence detection for machine safety, alarm or escape lighting.`,
  say`These papers support, and never replace, the responsible person's judgement and the local code.`,
];

const lineHeight: Millimetres = 3.7;
const headHeight: Millimetres = 7;
const edge: Millimetres = 4;

/** The sheet that the caution stands on. */
interface CautionOn {
  readonly frame: Box;
  readonly speak: Speak;
}

const linesOf = (supply: Supply, { frame, speak }: CautionOn): readonly string[] =>
  broken(speak(joined(cautions(supply), " ")), frame.right - frame.left - 2 * edge, 2.5);

/** Height of the caution across the top of a sheet. */
export const cautionHeight = (supply: Supply, on: CautionOn): Millimetres =>
  headHeight + linesOf(supply, on).length * lineHeight + 1;

/** The caution, framed heavily so that it is read first and survives a copier. */
export function cautionMarks(supply: Supply, on: CautionOn): readonly Mark[] {
  const { frame, speak } = on;
  const box = { ...frame, bottom: frame.top + cautionHeight(supply, on) };
  return [
    {
      kind: "area",
      rings: [corners(box)],
      fills: [{ kind: "solid", colour: paper }],
      pen: { width: 0.7, colour: ink },
    },
    {
      kind: "text",
      at: [frame.left + edge, frame.top + 5.4],
      text: speak(say`! ${supply.voltage} V kills.`),
      size: 3.5,
      anchor: "start",
      weight: "semibold",
      colour: ink,
    },
    ...linesOf(supply, on).map(
      (text, i): Mark => ({
        kind: "text",
        at: [frame.left + edge, frame.top + headHeight + 2.7 + i * lineHeight],
        text,
        size: 2.5,
        anchor: "start",
        weight: "regular",
        colour: ink,
      }),
    ),
  ];
}
