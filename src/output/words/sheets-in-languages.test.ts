import { describe, expect, test } from "vitest";
import { type FoundInstallation, wiringOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import { boxOf } from "../drawing/lettering.ts";
import type { Mark, Sheet, TextMark } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import { ferryWingCoverage, ferryWingTitle, ferryWingZones } from "../ferry-wing.fixture.ts";
import { settingOutSheets, type UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { threePhasePlan, threePhaseSite } from "../wiring/three-phase.fixture.ts";
import { wiredInstallation, wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { wiringDrawings, wiringSchedules } from "../wiring/wiring-documents.ts";
import { wiringPlan } from "../wiring/wiring-plan.ts";
import { type PaperLanguage, paperLanguages } from "./paper-words.ts";
import { speakIn } from "./speak.ts";

/** The same wing where cables are sized and marked as in the region of 120 V. */
const american = {
  ...wiredInstallation,
  boards: wiredInstallation.boards.map((one) => ({ ...one, voltage: 120 })),
};
/** The same wing with everything that a fitter asks of its devices. */
const fitted = {
  ...wiredSite,
  models: wiredSite.models.map((one) => ({
    ...one,
    cableEntry: "either" as const,
    entrySeal: "gland" as const,
    indicators: [{ sign: "red", meaning: "walk test" }],
  })),
};

/** A corridor with more detectors than a sheet holds, one of them and the office's button on circuits of others. */
const strange = {
  ...wiredSite,
  detectors: [
    ...wiredSite.detectors.map((one) =>
      one.id === "b2"
        ? { ...one, circuit: "Lighting 2", luminaires: ["c0"] }
        : one.id === "b1"
          ? { ...one, luminaires: ["c0", "c1"] }
          : one,
    ),
    ...Array.from({ length: 8 }, (_, i) => ({
      ...wiredSite.detectors[0]!,
      id: `many${i}`,
      tag: `B2.${String(i + 1).padStart(2, "0")}`,
      luminaires: ["c0", "c1"],
    })),
  ],
  switches: wiredSite.switches.map((one) => (one.id === "s1" ? { ...one, circuit: "Lighting 1" } : one)),
};
/** Low-voltage detectors at a relay pack of which little is known. */
const low = {
  ...wiredSite,
  detectors: wiredSite.detectors.filter(({ id }) => id === "b1" || id === "b2"),
  switches: [],
  models: wiredSite.models.map(({ terminals: _, ...one }) => ({ ...one, supply: "low-voltage" as const })),
};
const lowInstallation: FoundInstallation = {
  ...wiredInstallation,
  circuits: wiredInstallation.circuits.slice(0, 1).map((one) => ({
    ...one,
    contactors: [
      {
        id: "pack",
        name: "Corridor",
        kind: "relay-pack",
        detectors: ["b1", "b2"],
        suppressor: "unknown",
        labelled: "unknown",
        isolatesAllPoles: "unknown",
      },
    ],
  })),
};

/** The same wing with its level set by a pair of conductors. */
const paired = wiringPlan(wiredSite, wiredInstallation, wiringOfSite(wiredSite, wiredInstallation), {
  paired: new Set(["b1", "b2"]),
});

function sheetsIn(language: PaperLanguage): readonly Sheet[] {
  const title = { ...ferryWingTitle, speak: speakIn(language) };
  const wired = (of: { readonly site: typeof wiredSite; readonly plan: typeof wiredPlan }) => {
    const papers = {
      ...of,
      variant: "colour",
      title: (sheet: typeof title.sheet) => ({ ...title, sheet }),
    } as const;
    return [...wiringDrawings(papers), ...wiringSchedules(papers)];
  };
  const unnumbered: readonly UnnumberedSheet[] = [
    () =>
      planSheet({
        site: wiredSite,
        storey: "ground",
        coverage: ferryWingCoverage,
        zones: ferryWingZones,
        title,
      }),
    ...settingOutSheets({ site: wiredSite, storey: "ground", title, asbestos: {} }),
    ...wired({ site: wiredSite, plan: wiredPlan }),
    ...wired({ site: fitted, plan: paired }),
    ...wired({
      site: wiredSite,
      plan: wiringPlan(wiredSite, american, wiringOfSite(wiredSite, american)),
    }),
    ...wired({ site: threePhaseSite, plan: threePhasePlan }),
    ...wired({
      site: strange,
      plan: wiringPlan(strange, wiredInstallation, wiringOfSite(strange, wiredInstallation)),
    }),
    ...wired({ site: low, plan: wiringPlan(low, lowInstallation, wiringOfSite(low, lowInstallation)) }),
  ];
  return unnumbered.map((sheet, i) => sheet(i + 1, unnumbered.length));
}

const textsOf = (marks: readonly Mark[]): readonly TextMark[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark] : mark.kind === "clip" ? textsOf(mark.marks) : []));

describe.each(paperLanguages)("sheets in the language %s", (language) => {
  const sheets = sheetsIn(language);

  test("cut no word: no head of a column, no entry of a legend, no caption", () => {
    expect(sheets.length).toBeGreaterThan(20);
    for (const { name, marks } of sheets)
      expect([
        name,
        textsOf(marks)
          .map(({ text }) => text)
          .filter((text) => /[…\u00ad]/.test(text)),
      ]).toEqual([name, []]);
  });

  test("let no line run through a text of the wiring", () => {
    for (const { name, marks } of sheets)
      if (!/^(?:plan|setting-out)/.test(name)) expect([name, crossedTexts(marks)]).toEqual([name, []]);
  });

  test("keep every text on the sheet and off its neighbours", () => {
    for (const { name, marks, width, height } of sheets) {
      const boxes = textsOf(marks).map((mark) => ({ text: mark.text, ...boxOf({ ...mark, halo: 0 }) }));
      const outside = boxes.filter(
        (box) => box.left < 20 || box.right > width - 10 || box.top < 10 || box.bottom > height - 10,
      );
      const meeting = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(
            (b) =>
              Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.1 &&
              Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5,
          )
          .map((b) => `${a.text} | ${b.text}`),
      );
      expect([name, outside.map(({ text }) => text), meeting]).toEqual([name, [], []]);
    }
  });
});
