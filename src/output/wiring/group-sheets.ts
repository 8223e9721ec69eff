import { type Said, type SourceId, type Supply, say, type Words } from "#engine";
import { frameBox, papers } from "../drawing/frame.ts";
import type { Variant } from "../drawing/ink.ts";
import { broken, fitted, lengthOf } from "../drawing/lettering.ts";
import type { Mark, Millimetres, Sheet } from "../drawing/mark.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { cautionHeight } from "./caution-band.ts";
import { columnPitch, type SymbolKey } from "./column.ts";
import { columnsOf } from "./columns.ts";
import { type ConductorKind, colourSource, conductorPens } from "./conductors.ts";
import { boardWidth, feedMarks, lowestRail } from "./feed-marks.ts";
import { cableTable } from "./group-cable-table.ts";
import { firstColumn, longestNote, type Part, railsOf, wiresOf } from "./group-wires.ts";
import { openQuestions } from "./open-questions.ts";
import type { GroupPlan, WiringPlan } from "./plan.ts";
import { sheetFrame, verifyWords } from "./sheet-frame.ts";
import { joint, line, words } from "./symbols.ts";
import { wiringLegend } from "./wiring-legend.ts";

export interface GroupSheetsInput {
  readonly plan: WiringPlan;
  readonly group: GroupPlan;
  readonly title: Omit<SheetTitle, "page" | "pages">;
  readonly variant: Variant;
}

const perSheet = 5;

/** The wiring of one switched group: board, detectors, buttons, luminaires, every conductor by name, colour and pattern. More apparatus than a sheet holds goes on in parts. */
export function groupSheets(input: GroupSheetsInput): readonly UnnumberedSheet[] {
  const columns = columnsOf(input.group, { names: input.plan.names, speak: input.title.speak });
  const parts = Math.max(1, Math.ceil(columns.length / perSheet));
  return Array.from(
    { length: parts },
    (_, part): UnnumberedSheet =>
      (page, pages) =>
        partSheet(input, { columns, part, parts, page, pages }),
  );
}

function partSheet(input: GroupSheetsInput, part: Part): Sheet {
  const { plan, group, title, variant } = input;
  const { supply } = group;
  const { speak } = title;
  const region = supply.region;
  const frame = frameBox("A3");
  const top = frame.top + cautionHeight(supply, { frame, speak });
  const stripTop = frame.bottom - titleBlockSize[1];
  const own = part.columns.slice(part.part * perSheet, (part.part + 1) * perSheet);
  const board = { left: frame.left + 4, top: top + 17 };
  const rails = railsOf(group, board.top + 13);
  const columnTop = lowestRail(rails) + Math.max(21, longestNote(own, "above", speak) + 3);
  const feed = feedMarks(group, { names: plan.names, speak }, { ...board, rails });
  const wires = wiresOf(part, own, {
    rails,
    columnTop,
    board: board.left + boardWidth,
    speak,
  });
  const shownConductors = new Set<ConductorKind>([
    ...feed.stretches.map(({ conductor }) => conductor),
    ...wires.conductors,
  ]);
  const shownSymbols = new Set<SymbolKey>([
    ...own.flatMap(({ shows }) => shows),
    ...feed.shows,
    ...(wires.joints.length > 0 ? (["joint"] as const) : []),
  ]);
  const pens = (kind: ConductorKind) => conductorPens(kind, { region, variant });
  const used: readonly SourceId[] = ["IEC-81346-2", "IEC-60617", colourSource[region], "EN-50110-1"];
  const verify = verifyWords(used);
  const heading =
    part.parts > 1
      ? say`Switched group ${group.name}, part ${part.part + 1} of ${part.parts}`
      : say`Switched group ${group.name}`;
  const questions = openQuestions(group);
  const tableTop = wires.bottom + 6;
  return {
    name: `wiring-${group.line.id}-${part.part + 1}`,
    title: `${title.job}: ${speak(title.sheet)}, ${speak(group.name)}`,
    width: papers.A3[0],
    height: papers.A3[1],
    marks: [
      headingMark(speak(heading), { left: frame.left + 4, right: frame.right - 4, y: top + 8 }),
      words([frame.left + 4, top + 13.4], speak(group.pack ? packWords : supplyWords(supply))),
      feed.frame,
      ...feed.stretches.flatMap(({ conductor, y, from, to }) =>
        pens(conductor).map((pen) => line([from, y], [to, y], pen)),
      ),
      ...wires.lines.flatMap(({ conductor, from, to }) => pens(conductor).map((pen) => line(from, to, pen))),
      ...feed.marks,
      ...wires.joints.map(joint),
      ...wires.texts(region),
      ...own.flatMap((column, i) => column.marks([firstColumn + i * columnPitch, columnTop])),
      ...questionMarks(questions, {
        left: board.left,
        top: lowestRail(rails) + 24,
        right: firstColumn - 6,
        bottom: wires.firstBelow - 5,
        speak,
      }),
      ...(part.part > 0
        ? []
        : cableTable({ plan, group, speak }, { left: frame.left + 4, top: tableTop, bottom: stripTop - 2 })),
      ...wiringLegend(
        { symbols: shownSymbols, conductors: shownConductors },
        {
          box: {
            left: frame.left + 4,
            top: stripTop + 1,
            right: frame.right - titleBlockSize[0] - 2,
            bottom: frame.bottom - (verify ? 5.5 : 1),
          },
          region,
          variant,
          speak,
        },
      ),
      ...sheetFrame({
        paper: "A3",
        title: { ...title, page: part.page, pages: part.pages },
        supply,
        notes: verify ? [verify] : [],
      }),
    ],
  };
}

/** The name of the group in large letters; of one with many tags in smaller ones, before any is cut. */
function headingMark(
  text: string,
  at: { readonly left: Millimetres; readonly right: Millimetres; readonly y: Millimetres },
): Mark {
  const room = at.right - at.left;
  const size = lengthOf(text, 5, "semibold") <= room ? 5 : 3.5;
  const lettering = { size, weight: "semibold" } as const;
  return words([at.left, at.y], fitted(text, room, lettering), lettering);
}

const systemNames: Readonly<Record<Supply["system"], Words>> = {
  "TN-S": "TN-S",
  "TN-C-S": "TN-C-S",
  "TN-C": "TN-C",
  TT: "TT",
  IT: "IT",
  unknown: say`earthing system unknown`,
};

const supplyWords = ({ voltage, frequency, system }: Supply): Said =>
  say`${voltage} V, ${frequency} Hz, ${systemNames[system]}. Drawn without voltage, detectors at rest. Places: see plan; terminals, cables, boxes: see schedules.`;

const packWords = say`Low voltage from the relay pack, apart from the mains. Drawn without voltage, detectors at rest. Places: see plan; terminals, cables, boxes: see schedules.`;

function questionMarks(
  questions: readonly Said[],
  at: {
    readonly left: Millimetres;
    readonly top: Millimetres;
    readonly right: Millimetres;
    readonly bottom: Millimetres;
    readonly speak: Speak;
  },
): readonly Mark[] {
  const { speak } = at;
  if (questions.length === 0) return [];
  const lines = questions.flatMap((one) => broken(`– ${speak(one)}`, at.right - at.left, 2.5));
  const room = Math.max(1, Math.floor((at.bottom - at.top) / 3.9) - 1);
  const shown =
    lines.length > room
      ? [...lines.slice(0, room - 1), `– ${speak(say`more: see the list of assumptions`)}`]
      : lines;
  return [
    words([at.left, at.top], speak(say`Unknown until somebody has looked`), { weight: "semibold" }),
    ...shown.map((text, i) => words([at.left, at.top + 4 + i * 3.9], text)),
  ];
}
