import { type PlannedDevice, roomTitle, type Site } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken, emOf, fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { line, words } from "../wiring/symbols.ts";
import type { PaperLanguage } from "../words/paper-words.ts";
import { type CardLine, devicesOf, roomWords } from "./room-words.ts";
import { cardWordings } from "./wordings.ts";

export interface RoomCardsInput {
  readonly site: Site;
  readonly devices: readonly PlannedDevice[];
  readonly job: string;
  readonly date: string;
  readonly revision: string;
  /** Whom to call; a line to fill in where nobody is named. */
  readonly call?: string;
  /** What the people in the room read; English where nothing is said. */
  readonly language?: PaperLanguage;
}

/** An upright A5, two on an A4. */
const card: readonly [Millimetres, Millimetres] = [148.5, 210];
const margin: Millimetres = 13;
const inner: Millimetres = card[0] - 2 * margin;
/** Leading of the sentences, which are read from two metres away. [em] */
const LEADING = 1.3;
const perSheet = 2;

/** A card for each room whose light a detector switches: how it behaves, what the button does, whom to call. */
export function roomCards(input: RoomCardsInput): readonly UnnumberedSheet[] {
  const { site, devices, job } = input;
  const cards = site.rooms.flatMap((room) => {
    const lines = roomWords(
      devicesOf(site, room.id, devices),
      site.switches.filter((one) => one.room === room.id),
      input.language,
    );
    return lines.length === 0 ? [] : [{ title: roomTitle(room), lines }];
  });
  return Array.from(
    { length: Math.ceil(cards.length / perSheet) },
    (_, page): UnnumberedSheet =>
      () => ({
        name: `room-cards-${page + 1}`,
        title: `${job}: Room cards`,
        width: 2 * card[0],
        height: card[1],
        marks: [
          ...cards
            .slice(page * perSheet, (page + 1) * perSheet)
            .flatMap((one, i) => cardMarks(input, one, [i * card[0], 0])),
          line([card[0], 0], [card[0], card[1]], { width: 0.18, colour: muted, dash: [3, 2] }),
        ],
      }),
  );
}

function cardMarks(
  input: RoomCardsInput,
  { title, lines }: { readonly title: string; readonly lines: readonly CardLine[] },
  [x, top]: PaperPoint,
): readonly Mark[] {
  const wording = cardWordings[input.language ?? "en"];
  const left = x + margin;
  const right = left + inner;
  const foot = top + card[1] - margin;
  const call = input.call?.trim() ?? "";
  const begin = top + margin + 23;
  const large = sentencesOf(lines, { left, begin, size: 5 });
  // What is long is set smaller, so that it ends above the line of whom to call.
  const { marks: sentences } =
    large.end <= foot - 24 ? large : sentencesOf(lines, { left, begin, size: 3.5 });
  return [
    words([left, top + margin + 4], wording.title, { size: 3.5, colour: muted }),
    words([left, top + margin + 15], fitted(title, inner, { size: 7, weight: "semibold" }), {
      size: 7,
      weight: "semibold",
    }),
    line([left, top + margin + 19.5], [right, top + margin + 19.5], { width: 0.5, colour: ink }),
    ...sentences,
    line([left, foot - 22], [right, foot - 22], { width: 0.25, colour: ink }),
    words([left, foot - 15], wording.call, { size: 3.5, colour: muted }),
    ...(call === ""
      ? [line([left + 60, foot - 14.6], [right, foot - 14.6], { width: 0.25, colour: ink })]
      : callMarks(call, [right, foot - 15])),
    words([left, foot - 5.5], fitted(wording.never, inner, { size: 2.5 }), {
      colour: muted,
    }),
    words(
      [left, foot],
      fitted([input.job, input.date, input.revision].filter(Boolean).join(", "), inner, { size: 2.5 }),
      { colour: muted },
    ),
  ];
}

/** The lines of a card below one another, and where they end. */
function sentencesOf(
  lines: readonly CardLine[],
  { left, begin, size }: { readonly left: Millimetres; readonly begin: Millimetres; readonly size: 5 | 3.5 },
): { readonly marks: readonly Mark[]; readonly end: Millimetres } {
  const leading = LEADING * emOf(size);
  let y = begin;
  const marks = lines.flatMap(({ heading, text }): readonly Mark[] => {
    y += 5.5;
    const at = y;
    const rows = broken(text, inner, size);
    y += rows.length * leading + 3;
    return [
      words([left, at], heading, { size: 3.5, colour: muted }),
      ...rows.map((row, i) => words([left, at + 2 + (i + 0.8) * leading], row, { size })),
    ];
  });
  return { marks, end: y - 1 };
}

/** Whom to call, whole: half a telephone number is none. Smaller where it is long, on two lines where it is longer. */
function callMarks(call: string, [right, y]: PaperPoint): readonly Mark[] {
  const width = inner - 60;
  const size = ([5, 3.5] as const).find((one) => broken(call, width, one).length === 1);
  if (size !== undefined) return [words([right, y], call, { size, anchor: "end" })];
  return broken(call, width, 2.5).map((row, i) => words([right, y - 3 + i * 4], row, { anchor: "end" }));
}
