import { expect, test } from "vitest";
import { english, type SettingName, settingsOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import { boxOf } from "../drawing/lettering.ts";
import type { Sheet, TextMark } from "../drawing/mark.ts";
import { wiredSite } from "../wiring/wired-wing.fixture.ts";
import { cardSize } from "./setting-card.ts";
import { settingSheets } from "./setting-sheets.ts";
import { settingOrder, settingTitles, settingWords } from "./setting-words.ts";

const planned = settingsOfSite(wiredSite, {
  chosen: new Map([["b3", { offDelay: 900, threshold: 320, lock: "locked" }]]),
}).devices;

function sheetsOf(labels: Readonly<Record<string, Readonly<Record<string, string>>>> = {}): readonly Sheet[] {
  const unnumbered = settingSheets({
    site: wiredSite,
    devices: planned,
    labels: new Map(Object.entries(labels)),
    job: wiredSite.name,
    date: "2026-03-02",
    revision: "A",
    speak: english,
  });
  return unnumbered.map((sheet, i) => sheet(i + 1, unnumbered.length));
}

const texts = ({ marks }: Sheet): readonly TextMark[] =>
  marks.filter((mark): mark is TextMark => mark.kind === "text");

/** The lettering of the first card of a device. */
function cardOf(sheets: readonly Sheet[], tag: string): readonly TextMark[] {
  for (const sheet of sheets) {
    const head = texts(sheet).find(({ text, size }) => text === tag && size === 5);
    if (!head) continue;
    const column = Math.floor(head.at[0] / cardSize[0]);
    const row = Math.floor(head.at[1] / cardSize[1]);
    return texts(sheet).filter(
      ({ at }) => Math.floor(at[0] / cardSize[0]) === column && Math.floor(at[1] / cardSize[1]) === row,
    );
  }
  return [];
}

test("Every device has every setting on its cards, once", () => {
  const all = sheetsOf().flatMap(texts);
  const cards = new Set(all.filter(({ size }) => size === 5).map(({ text }) => text));
  expect([...cards].toSorted()).toEqual(wiredSite.detectors.map(({ tag }) => tag).toSorted());
  for (const name of settingOrder)
    expect(
      all.filter(({ text, weight }) => text === english(settingTitles[name]) && weight === "semibold").length,
    ).toBe(wiredSite.detectors.length);
});

test("Four cards of A6 are a sheet of A4, and nothing leaves its card or the part that a printer reaches", () => {
  for (const sheet of sheetsOf()) {
    expect([sheet.width, sheet.height]).toEqual([210, 297]);
    for (const text of texts(sheet)) {
      const box = boxOf(text);
      const column = Math.floor((box.left + 1) / cardSize[0]);
      const row = Math.floor((box.top + 1) / cardSize[1]);
      expect(box.left).toBeGreaterThanOrEqual(column * cardSize[0] + 4);
      expect(box.right).toBeLessThanOrEqual((column + 1) * cardSize[0] - 4);
      expect(box.top).toBeGreaterThanOrEqual(row * cardSize[1] + 2.5);
      expect(box.bottom).toBeLessThanOrEqual((row + 1) * cardSize[1] - 3.5);
    }
  }
});

test("No line runs through a text of a card, and no two texts lie upon each other", () => {
  for (const sheet of sheetsOf({ b3: { offDelay: "position 2" } })) {
    expect(crossedTexts(sheet.marks)).toEqual([]);
    const boxes = texts(sheet).map((text) => ({ text: text.text, ...boxOf(text) }));
    const upon = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) =>
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.05 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.05,
        )
        .map((b) => `${a.text} / ${b.text}`),
    );
    expect(upon).toEqual([]);
  }
});

test("A value that a person chose carries the sign of it, and derived ones carry their reason instead", () => {
  const [chosen, derived] = [planned.find(({ context }) => context.device === "b3")!, planned[0]!];
  const signs = (device: typeof chosen): number =>
    settingOrder.filter((name) => device.settings[name].kind === "chosen").length;
  expect(signs(chosen)).toBe(3);
  expect(signs(derived)).toBe(0);
  const sheets = sheetsOf();
  const dots = sheets.flatMap(({ marks }) => marks.filter((mark) => mark.kind === "circle"));
  const cards = sheets.flatMap(texts).filter(({ size }) => size === 5).length;
  // One in the head of each card, and one at each chosen value.
  expect(dots.length).toBe(cards + 3);
  const words = cardOf(sheets, "B0.03").map(({ text }) => text);
  expect(words).toContain("15 min");
  expect(words).toContain("320 lx");
  expect(words).toContain("Chosen by a person.");
  const reason = derived.settings.offDelay.kind === "derived" ? derived.settings.offDelay.reason : "";
  expect(
    cardOf(sheets, "B0.01")
      .map(({ text }) => text)
      .join(" "),
  ).toContain(english(reason));
});

test("What the device at hand calls a position stands beside ours; without it there is a line to write on", () => {
  const bare = cardOf(sheetsOf(), "B0.03").map(({ text }) => text);
  const labelled = cardOf(sheetsOf({ b3: { offDelay: "position 2" } }), "B0.03").map(({ text }) => text);
  expect(bare).not.toContain("= position 2");
  expect(labelled).toContain("= position 2");
  const lines = (sheets: readonly Sheet[]): number =>
    sheets.flatMap(({ marks }) => marks.filter((mark) => mark.kind === "line")).length;
  expect(lines(sheetsOf({ b3: { offDelay: "position 2" } }))).toBe(lines(sheetsOf()) - 1);
});

test.each([
  ["offDelay", 45, "45 s"],
  ["offDelay", 90, "1.5 min"],
  ["threshold", 319.6, "320 lx"],
  ["threshold", "off", "off"],
  ["impulse", { pulse: 1, pause: 9 }, "1 s on, 9 s pause"],
  ["groupRole", "parallel", "outputs joined"],
] as const)("%s %j reads %s", (name, value, words) => {
  expect(english(settingWords(name as SettingName, value as never))).toBe(words);
});
