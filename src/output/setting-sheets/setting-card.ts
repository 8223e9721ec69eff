import {
  type Detector,
  day,
  joined,
  type PlannedDevice,
  type Said,
  type SettingName,
  type Site,
  say,
  sources,
} from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken, emOf, fitted, lengthOf } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import { maskWords, millimetres, turnWords } from "../setting-out/device-rows.ts";
import { line, words } from "../wiring/symbols.ts";
import type { Speak } from "../words/speak.ts";
import { settingOrder, settingTitles, settingWords } from "./setting-words.ts";

/** A card of A6, which fits a glove box. */
export const cardSize: readonly [Millimetres, Millimetres] = [105, 148.5];
const margin: Millimetres = 5;
const inner: Millimetres = cardSize[0] - 2 * margin;
/** From line to line of a reason, 1.3 of the em: reasons are read at arm's length, on a ladder. */
const lineHeight: Millimetres = 1.3 * emOf(2.5);
/** From the last line of one setting to the next. */
const entryGap: Millimetres = 2.4;
const headHeight: Millimetres = 30;
const footHeight: Millimetres = 8.6;
const valueAt: Millimetres = 34;
const labelAt: Millimetres = 70;

/** What is set on one device, with what the device at hand calls it. */
export interface CardInput {
  readonly site: Site;
  readonly device: PlannedDevice;
  /** "position 2", by name of the setting. */
  readonly labels: Readonly<Record<string, string>>;
  readonly job: string;
  readonly date: string;
  readonly revision: string;
  readonly speak: Speak;
}

/** The sign of a value that a person chose. */
const mark = (at: PaperPoint): Mark => ({ kind: "circle", at, radius: 0.9, fill: ink });

/** A card that still needs its place on a sheet. */
export type Card = (at: PaperPoint, page: string) => readonly Mark[];

interface Entry {
  readonly name: SettingName;
  readonly value: string;
  readonly chosen: "chosen" | "derived";
  readonly label: string | undefined;
  readonly reason: readonly string[];
}

/** The cards of one device: one, or more where the reasons are long. */
export function settingCards(input: CardInput): readonly Card[] {
  const pages = onCards(settingOrder.map((name) => entryOf(input, name)));
  return pages.map(
    (page, i): Card =>
      (at, sheet) =>
        cardMarks(input, { page, number: i + 1, of: pages.length, at, sheet }),
  );
}

/** As few cards as hold all entries, about equally full. */
function onCards(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const room = cardSize[1] - headHeight - footHeight;
  const fewest = filledTo(entries, room).length;
  const all = entries.reduce((sum, entry) => sum + heightOf(entry), 0);
  for (let limit = all / fewest; limit < room; limit += 1) {
    const cards = filledTo(entries, limit);
    if (cards.length === fewest) return cards;
  }
  return filledTo(entries, room);
}

function filledTo(entries: readonly Entry[], limit: Millimetres): readonly (readonly Entry[])[] {
  const cards: Entry[][] = [[]];
  let used = 0;
  for (const entry of entries) {
    const height = heightOf(entry);
    if (used > 0 && used + height > limit) {
      cards.push([]);
      used = 0;
    }
    cards.at(-1)!.push(entry);
    used += height;
  }
  return cards;
}

const heightOf = ({ reason }: Entry): Millimetres => (reason.length + 1) * lineHeight + entryGap;

function entryOf({ device, labels, speak }: CardInput, name: SettingName): Entry {
  const setting = device.settings[name];
  const reason =
    setting.kind === "derived"
      ? setting.assumption === undefined
        ? setting.reason
        : say`${setting.reason} Assumed: ${setting.assumption}`
      : (setting.reason ?? say`Chosen by a person.`);
  return {
    name,
    value: speak(settingWords(name, setting.value)),
    chosen: setting.kind,
    label: labels[name]?.trim() || undefined,
    reason: broken(speak(reason), inner - 1, 2.5),
  };
}

/** Words with a line to write on behind them, as far as a place. */
const toFillIn = (text: string, [x, y]: PaperPoint, to: Millimetres): readonly Mark[] => [
  words([x, y], text, { colour: muted }),
  line([x + lengthOf(text, 2.5) + 1.5, y + 0.1], [to, y + 0.1], { width: 0.18, colour: muted }),
];

function placeWords({ height, turn, masks }: Detector): Said {
  const [high, turned] = [millimetres(height), turnWords(turn)];
  return masks.length === 0
    ? say`Height ${high} mm, turn ${turned}, masks none`
    : say`Height ${high} mm, turn ${turned}, masks ${joined(masks.map(maskWords), ", ")}`;
}

function cardMarks(
  input: CardInput,
  card: {
    readonly page: readonly Entry[];
    readonly number: number;
    readonly of: number;
    readonly at: PaperPoint;
    readonly sheet: string;
  },
): readonly Mark[] {
  const [left, top] = [card.at[0] + margin, card.at[1]];
  const right = left + inner;
  const { speak } = input;
  const { context } = input.device;
  const detector = input.site.detectors.find(({ id }) => id === context.device);
  const model = input.site.models.find(({ id }) => id === detector?.model);
  const place = detector ? speak(placeWords(detector)) : "";
  let y = top + headHeight;
  const rows = card.page.flatMap((entry): readonly Mark[] => {
    const at = y;
    y += heightOf(entry);
    return [
      words([left, at], speak(settingTitles[entry.name]), { weight: "semibold" }),
      words(
        [left + valueAt, at],
        fitted(entry.value, labelAt - valueAt - 1.5, { size: 2.5, weight: "semibold" }),
        {
          weight: "semibold",
        },
      ),
      ...(entry.chosen === "chosen" ? [mark([left + valueAt - 2.2, at - 1.2])] : []),
      ...(entry.label === undefined
        ? [line([left + labelAt, at + 0.3], [right, at + 0.3], { width: 0.18, colour: muted })]
        : [words([left + labelAt, at], fitted(`= ${entry.label}`, inner - labelAt, { size: 2.5 }))]),
      ...entry.reason.map((text, i) => words([left, at + (i + 1) * lineHeight], text, { colour: muted })),
    ];
  });
  const unsure = new Set(
    card.page.flatMap(({ name }) => {
      const setting = input.device.settings[name];
      return setting.kind === "derived" && sources[setting.source].verify ? [speak(settingTitles[name])] : [];
    }),
  );
  const foot = card.at[1] + cardSize[1] - 4.8;
  const what =
    card.of > 1 ? say`Set before it goes up, card ${card.number} of ${card.of}` : say`Set before it goes up`;
  return [
    words([left, top + 8.4], fitted(context.tag, 34, { size: 5, weight: "semibold" }), {
      size: 5,
      weight: "semibold",
    }),
    words([right, top + 5.8], speak(what), { anchor: "end" }),
    words([right, top + 10.3], fitted(context.room, inner - 36, { size: 2.5 }), { anchor: "end" }),
    words([left, top + 14.8], fitted(model?.title ?? speak(say`model unknown`), inner, { size: 2.5 })),
    words([left, top + 19.3], fitted(place, inner, { size: 2.5 })),
    mark([left + valueAt - 2.2, top + 22.6]),
    words([left + valueAt, top + 23.8], speak(say`chosen, or derived`), { colour: muted }),
    words([left + labelAt, top + 23.8], speak(say`on this device`), { colour: muted }),
    line([left, top + 25.2], [right, top + 25.2], { width: 0.35, colour: ink }),
    ...rows,
    ...toFillIn(speak(say`Set by`), [left, foot - 4.2], left + 56),
    ...toFillIn(speak(say`Date`), [left + 59, foot - 4.2], right),
    words(
      [left, foot],
      fitted(
        [
          unsure.size > 0 ? speak(say`Verify: ${[...unsure].join(", ")}`) : "",
          speak(say`Planned`),
          speak(day(input.date)),
          input.revision,
          input.job,
        ]
          .filter(Boolean)
          .join(", "),
        inner - 26,
        { size: 2.5 },
      ),
      { colour: muted },
    ),
    words([right, foot], card.sheet, { anchor: "end", colour: muted }),
  ];
}
