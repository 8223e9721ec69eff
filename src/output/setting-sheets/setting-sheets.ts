import { type PlannedDevice, type Site, say } from "#engine";
import { muted } from "../drawing/ink.ts";
import type { Mark } from "../drawing/mark.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { line } from "../wiring/symbols.ts";
import type { Speak } from "../words/speak.ts";
import { cardSize, settingCards } from "./setting-card.ts";

export interface SettingSheetsInput {
  readonly site: Site;
  readonly devices: readonly PlannedDevice[];
  /** What the device at hand calls a setting and its position, by detector and setting. */
  readonly labels: ReadonlyMap<string, Readonly<Record<string, string>>>;
  readonly job: string;
  readonly date: string;
  readonly revision: string;
  /** What the cards speak. */
  readonly speak: Speak;
}

const perSheet = 4;

/** A card of A6 for each device, four on an upright A4 sheet with lines to cut along. */
export function settingSheets(input: SettingSheetsInput): readonly UnnumberedSheet[] {
  const { site, job, date, revision, speak } = input;
  const cards = input.devices.flatMap((device) =>
    settingCards({
      site,
      device,
      labels: input.labels.get(device.context.device) ?? {},
      job,
      date,
      revision,
      speak,
    }),
  );
  return Array.from({ length: Math.ceil(cards.length / perSheet) }, (_, i): UnnumberedSheet => {
    const own = cards.slice(i * perSheet, (i + 1) * perSheet);
    return (page, pages) => ({
      name: `setting-sheets-${i + 1}`,
      title: `${job}: ${speak(say`Setting sheets`)}`,
      width: 2 * cardSize[0],
      height: 2 * cardSize[1],
      marks: [
        ...own.flatMap((card, n) =>
          card(
            [(n % 2) * cardSize[0], Math.floor(n / 2) * cardSize[1]],
            speak(say`page ${page} of ${pages}`),
          ),
        ),
        ...cuts,
      ],
    });
  });
}

const cutPen = { width: 0.18, colour: muted, dash: [3, 2] } as const;
const cuts: readonly Mark[] = [
  line([cardSize[0], 0], [cardSize[0], 2 * cardSize[1]], cutPen),
  line([0, cardSize[1]], [2 * cardSize[0], cardSize[1]], cutPen),
];
