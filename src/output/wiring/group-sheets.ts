import { joined, type Said, type SourceId, type Supply, say, type Words } from "#engine";
import { frameBox, papers } from "../drawing/frame.ts";
import type { Variant } from "../drawing/ink.ts";
import { broken, fitted, lengthOf } from "../drawing/lettering.ts";
import type { Mark, Millimetres, Sheet } from "../drawing/mark.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { cautionHeight } from "./caution-band.ts";
import { type Column, columnHeight, columnPitch, type SymbolKey, type Tap } from "./column.ts";
import { columnsOf } from "./columns.ts";
import { type ConductorKind, colourSource, colourWords, conductorPens, markings } from "./conductors.ts";
import { allRails, boardWidth, feedMarks, lowestRail, type Rails } from "./feed-marks.ts";
import { cableTable } from "./group-cable-table.ts";
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

const railsApart: Millimetres = 8;
/** Where the first apparatus stands, right of board and names of conductors. */
const firstColumn: Millimetres = 150;
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

interface Part {
  readonly columns: readonly Column[];
  readonly part: number;
  readonly parts: number;
  readonly page: number;
  readonly pages: number;
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
      words(
        [frame.left + 4, top + 8],
        fitted(speak(heading), frame.right - frame.left - 8, {
          size: 5,
          weight: "semibold",
        }),
        { size: 5, weight: "semibold" },
      ),
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

/** One rail for each line conductor of the circuit, then neutral and protective conductor; two for a low-voltage supply. */
function railsOf({ feed, pack }: GroupPlan, top: Millimetres): Rails {
  if (pack)
    return {
      lines: [{ conductor: "low-plus", y: top }],
      neutral: { conductor: "low-minus", y: top + railsApart },
      protective: undefined,
    };
  const lines = (feed?.lines ?? ["unknown" as const]).map((conductor, i) => ({
    conductor,
    y: top + i * railsApart,
  }));
  const neutral = top + lines.length * railsApart;
  return {
    lines,
    neutral: { conductor: "neutral", y: neutral },
    protective: { conductor: "protective", y: neutral + railsApart },
  };
}

/** Rails and drops: where conductors run, where they are joined, what is written at them. */
function wiresOf(
  { part, parts, columns }: Part,
  own: readonly Column[],
  at: {
    readonly rails: Rails;
    readonly columnTop: Millimetres;
    readonly board: Millimetres;
    readonly speak: Speak;
  },
) {
  const { rails, columnTop, board, speak } = at;
  const bottom = columnTop + columnHeight;
  const taps = own.flatMap((column, i) =>
    column.taps.map((tap) => ({ ...tap, x: firstColumn + i * columnPitch + tap.x })),
  );
  const key = ({ conductor, rail }: Tap): string => `${conductor} ${rail ?? 0}`;
  const noted = (tap: Tap): boolean => noteOf(tap) !== undefined;
  const below = taps.filter((tap) => tap.side === "below" && !noted(tap));
  const elsewhere = new Set(
    columns.flatMap(({ taps: all }) => all.filter(({ side }) => side === "below").map(key)),
  );
  const startOf = (name: string): number =>
    Math.min(...below.filter((tap) => key(tap) === name).map(({ x }) => x));
  // The rail that begins furthest left lies uppermost: then no conductor crosses a name, which stands left of its rail.
  const belowKeys = [...new Set(below.map(key))].toSorted((a, b) => startOf(a) - startOf(b));
  const firstBelow = bottom + Math.max(16, longestNote(own, "below", speak) + 1);
  const yBelow = new Map(belowKeys.map((name, i) => [name, firstBelow + i * railsApart]));
  const lastX = firstColumn + own.length * columnPitch - 4;
  const goesOn = part < parts - 1;
  const lines: {
    readonly conductor: ConductorKind;
    readonly from: readonly [Millimetres, Millimetres];
    readonly to: readonly [Millimetres, Millimetres];
  }[] = [];
  const joints: (readonly [Millimetres, Millimetres])[] = [];
  const texts: {
    readonly x: Millimetres;
    readonly y: Millimetres;
    readonly conductor: ConductorKind;
    readonly anchor: "start" | "end";
  }[] = [];
  const notes = taps.flatMap((tap) => {
    const note = noteOf(tap);
    return note === undefined ? [] : [{ x: tap.x, side: tap.side, text: speak(note) }];
  });
  for (const { conductor, y } of allRails(rails)) {
    const mine = taps.filter((tap) => tap.side === "above" && tap.conductor === conductor && !noted(tap));
    const ends = goesOn ? lastX : Math.max(board + 56, ...mine.map(({ x }) => x));
    lines.push({ conductor, from: [board, y], to: [ends, y] });
    texts.push({ x: board + 3, y: y - 1.4, conductor, anchor: "start" });
    for (const { x } of mine) {
      lines.push({ conductor, from: [x, y], to: [x, columnTop] });
      if (x < ends) joints.push([x, y]);
    }
  }
  for (const name of belowKeys) {
    const mine = below.filter((tap) => key(tap) === name);
    const { conductor } = mine[0]!;
    const y = yBelow.get(name)!;
    const xs = mine.map(({ x }) => x);
    const continued = parts > 1 && elsewhere.has(name);
    const from = continued && part > 0 ? firstColumn - 3 : Math.min(...xs);
    const to = continued && goesOn ? lastX : Math.max(...xs);
    if (to > from) lines.push({ conductor, from: [from, y], to: [to, y] });
    texts.push({ x: from - 2.5, y: y + 1.2, conductor, anchor: "end" });
    for (const { x } of mine) {
      lines.push({ conductor, from: [x, bottom], to: [x, y] });
      if (x > from && x < to) joints.push([x, y]);
    }
  }
  return {
    lines,
    joints,
    firstBelow,
    bottom: firstBelow + Math.max(0, belowKeys.length - 1) * railsApart,
    conductors: [...lines.map(({ conductor }) => conductor)],
    texts: (region: Supply["region"]): readonly Mark[] => [
      ...texts.map(({ x, y, conductor, anchor }) =>
        words(
          [x, y],
          speak(
            conductor === "unknown"
              ? say`line unknown`
              : joined([markings[conductor], colourWords(conductor, region)], "  "),
          ),
          { anchor },
        ),
      ),
      ...notes.map(({ x, side, text }) =>
        words([x + 0.9, side === "above" ? columnTop - 2 : firstBelow - 1], text, { turn: 90 }),
      ),
      ...(goesOn
        ? [
            words([lastX, (rails.lines[0] ?? rails.neutral).y - 1.4], speak(say`→ part ${part + 2}`), {
              anchor: "end",
            }),
          ]
        : []),
    ],
  };
}

/** What is written at a tap that meets no rail. */
const noteOf = ({ conductor, foreign }: Tap): Words | undefined =>
  foreign ?? (conductor === "unknown" ? say`unknown` : undefined);

/** The longest of the notes that stand upright at the taps of one side. */
const longestNote = (columns: readonly Column[], side: Tap["side"], speak: Speak): Millimetres =>
  Math.max(
    0,
    ...columns.flatMap(({ taps }) =>
      taps
        .filter((tap) => tap.side === side)
        .map((tap) => {
          const note = noteOf(tap);
          return note === undefined ? 0 : lengthOf(speak(note), 2.5);
        }),
    ),
  );

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
