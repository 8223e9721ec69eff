import { describe, expect, test } from "vitest";
import { emptyPriceList, handoverOf, type Words } from "#engine";
import type { Mark, TextMark } from "../drawing/mark.ts";
import { labelSheets } from "../labels/label-sheets.ts";
import { offerFiles } from "../quote/offer-files.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingSheets } from "../setting-sheets/setting-sheets.ts";
import { wiredInstallation, wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { type PaperLanguage, paperLanguages } from "../words/paper-words.ts";
import { speakIn } from "../words/speak.ts";
import { boundPack } from "./bound-pack.ts";
import { wiringPart } from "./wiring-part.ts";

const handover = handoverOf(wiredSite, {
  choices: {},
  found: wiredInstallation,
  entries: [],
  readings: () => [],
  notes: [],
});

/** All papers that are words and tables, in a language. */
async function papersIn(language: PaperLanguage): Promise<readonly UnnumberedSheet[]> {
  const speak = speakIn(language);
  const details = {
    ...{ job: "Wing", client: "Owner", site: "Quay", date: "2026-03-02", revision: "A" },
    ...{ drawnBy: "J. M.", checkedBy: "R. O.", speak },
  };
  const title = (sheet: Words) => ({ ...details, storey: "", sheet });
  const wiring = wiringPart({ whole: handover, handover, details, variant: "colour" }).documents;
  const list = { ...emptyPriceList, currency: "EUR" };
  const { documents } = await offerFiles({
    site: wiredSite,
    plan: wiredPlan,
    list,
    accepted: [
      {
        ...{ kind: "material", item: "branch box", unit: "piece", quantity: 99, standing: "firm" },
        ...{ price: 1, amount: 99 },
      },
    ],
    title,
  });
  const none = { name: "", heading: "", sheets: [] };
  const bound = boundPack(
    {
      ...{ handover, whole: handover, details, identity: "", created: new Date(0), asbestos: {} },
      ...{ deviceLabels: new Map(), fonts: { regular: new Uint8Array(), semibold: new Uint8Array() } },
      owed: [{ text: "Lid missing", room: "", owner: "R. O.", due: "2026-04-01", closed: "2026-04-02" }],
    },
    { plans: [], settingOut: [], wiring, settings: none, masks: none },
  );
  const own = {
    site: wiredSite,
    devices: handover.settings.devices,
    speak,
    ...{ job: "Wing", identity: "" },
  };
  return [
    ...bound.flatMap(({ sheets }) => sheets),
    ...documents.flatMap(({ sheets }) => sheets),
    ...settingSheets({ ...own, labels: new Map(), date: "2026-03-02", revision: "A" }),
    ...labelSheets(own),
  ];
}

const textsIn = (marks: readonly Mark[]): readonly TextMark[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark] : mark.kind === "clip" ? textsIn(mark.marks) : []));

describe.each(paperLanguages)("Papers in the language %s", (language) => {
  test("cut no word that is theirs: only names that are too long end in an ellipsis", async () => {
    const papers = await papersIn(language);
    const sheets = papers.map((sheet, i) => sheet(i + 1, papers.length));
    const texts = sheets.flatMap(({ marks }) => textsIn(marks)).map(({ text }) => text);
    expect(texts.length).toBeGreaterThan(500);
    // Dots to write on, and the end of a list that goes on, are no cuts.
    const cut = texts.filter((text) => /[^…\s;]…$/.test(text));
    expect([...new Set(cut)]).toEqual([]);
  });
});
