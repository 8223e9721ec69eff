import { joined, type Supply, say, type Words } from "#engine";
import { lengthOf } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";
import { type Column, columnHeight, columnPitch, type Tap } from "./column.ts";
import { type ConductorKind, colourWords, markings } from "./conductors.ts";
import { allRails, type Rails } from "./feed-marks.ts";
import type { GroupPlan } from "./plan.ts";
import { words } from "./symbols.ts";

const railsApart: Millimetres = 8;
/** Where the first apparatus stands, right of board and names of conductors. */
export const firstColumn: Millimetres = 150;

/** The columns of a group, and which of the sheets that share them. */
export interface Part {
  readonly columns: readonly Column[];
  readonly part: number;
  readonly parts: number;
  readonly page: number;
  readonly pages: number;
}

/** One rail for each line conductor of the circuit, then neutral and protective conductor; two for a low-voltage supply. */
export function railsOf({ feed, pack }: GroupPlan, top: Millimetres): Rails {
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
export function wiresOf(
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
export const longestNote = (columns: readonly Column[], side: Tap["side"], speak: Speak): Millimetres =>
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
