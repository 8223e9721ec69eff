import { describe, expect, test } from "vitest";
import { english, handoverOf, type SiteEntry } from "#engine";
import type { Sheet } from "../drawing/mark.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { wiredInstallation, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { roomPages } from "./room-pages.ts";
import { testPages } from "./test-pages.ts";
import { uprightPages } from "./upright-pages.ts";

const record = (entries: readonly SiteEntry[] = []) =>
  handoverOf(wiredSite, { choices: {}, found: wiredInstallation, entries, readings: () => [], notes: [] });
const handover = record();
const title = {
  job: "Ferry wing",
  client: "",
  site: "",
  date: "2026-03-02",
  revision: "A",
  drawnBy: "",
  checkedBy: "",
  speak: english,
  storey: "Ground floor",
  sheet: "Sheet",
};
const drawn = (sheets: readonly UnnumberedSheet[]): readonly Sheet[] =>
  sheets.map((sheet, i) => sheet(i + 1, sheets.length));

interface Word {
  readonly text: string;
  readonly weight: string;
  readonly at: readonly [number, number];
}
const wordsOf = ({ marks }: Pick<Sheet, "marks">): readonly Word[] =>
  marks.flatMap((mark): readonly Word[] =>
    mark.kind === "text"
      ? [{ text: mark.text, weight: mark.weight, at: [mark.at[0], mark.at[1]] }]
      : mark.kind === "clip"
        ? wordsOf(mark)
        : [],
  );

describe("The page of a room", () => {
  const pages = handover.rooms.map((room) => ({
    room,
    sheets: drawn(roomPages({ handover, room, title, variant: "colour" })),
  }));

  test("is one for an ordinary room, and nothing on it reaches into the title block", () => {
    expect(pages.length).toBeGreaterThan(3);
    // The rooms of this plan are full of mistakes: with three of them each is as long as rooms are before they are mended.
    const ordinary = pages.filter(({ room }) => room.coverage.checks.length <= 4);
    expect(ordinary).toHaveLength(pages.length - 1);
    for (const { room: whole } of ordinary) {
      const room = { ...whole, findings: whole.findings.slice(0, 3) };
      const sheets = drawn(roomPages({ handover, room, title, variant: "colour" }));
      expect([room.title, sheets.length]).toEqual([room.title, 1]);
      const words = wordsOf(sheets[0]!);
      const block = Math.min(...words.filter(({ text }) => text === "Job").map(({ at }) => at[1]));
      const open = words.find(({ text }) => text === "Open in this room")!;
      expect(open.at[1]).toBeLessThan(block);
    }
  });

  test("says the name of the room once as a title, at a scale of the trade", () => {
    for (const { room, sheets } of pages) {
      const titles = wordsOf(sheets[0]!).filter(
        ({ text, weight }) => weight === "semibold" && text.startsWith(room.title),
      );
      expect(titles.map(({ text }) => text.replace(/, 1 of \d$/, ""))).toEqual([room.title]);
      expect([20, 25, 50, 100, 200]).toContain(sheets[0]!.scale);
    }
  });

  test("goes on where its tables are longer than a page, and says so", () => {
    const rows = Array.from({ length: 60 }, (_, i) => [`Row ${i + 1}`, "1 m"]);
    const sheets = drawn(
      uprightPages({
        name: "long",
        heading: "Long room",
        blocks: [
          {
            heading: "Rows",
            columns: [
              { head: "Row", width: 100, align: "start" },
              { head: "Length", width: 40, align: "end" },
            ],
            rows,
          },
        ],
        title,
        notes: [],
        drawn: (free) => {
          expect(free).toBeLessThan(0);
          return { height: 60, scale: 50, marks: () => [] };
        },
      }),
    );
    expect(sheets.length).toBe(2);
    expect(sheets.map(({ scale }) => scale)).toEqual([50, undefined]);
    const texts = sheets.map((sheet) => wordsOf(sheet).map(({ text }) => text));
    expect(texts[0]).toContain("Long room, 1 of 2");
    expect(texts[1]).toContain("Rows, continued");
    for (const [row] of rows) expect(texts.flat().filter((text) => text === row)).toEqual([row]);
  });
});

describe("Proving dead on the test pages", () => {
  const about = { kind: "detector", id: wiredSite.detectors[0]!.id } as const;
  const entry = (part: string, outcome: SiteEntry["outcome"], minute: number): SiteEntry => ({
    id: `e${minute}`,
    time: `2026-03-02T09:${String(minute).padStart(2, "0")}:00Z`,
    about,
    step: "prove-dead",
    part,
    outcome,
  });
  /** Cells of a line of the matrix, by the heads above them. */
  const line = (pages: readonly Sheet[], tag: string): Readonly<Record<string, string>> => {
    const sheet = pages.find((one) =>
      wordsOf(one).some(({ text }) => text.startsWith("Proved dead, between")),
    )!;
    const words = wordsOf(sheet);
    const from = words.find(({ text }) => text.startsWith("Proved dead, between"))!.at[1];
    const below = words.filter(({ at }) => at[1] > from);
    const head = below.filter(({ at }) => at[1] === below.find(({ text }) => text === "At")!.at[1]);
    const row = below.find(({ text, at }) => text === tag && at[0] === head[0]!.at[0])!;
    return Object.fromEntries(
      head.map(({ text, at }, i) => [
        `${text}${i > 1 && text === "Tester" ? " after" : ""}`,
        below.find((one) => one.at[1] === row.at[1] && one.at[0] === at[0])?.text ?? "",
      ]),
    );
  };

  test("is a matrix of each detector against every pair of conductors, blank where nobody entered it", () => {
    const sheets = drawn(testPages({ handover, title, by: new Map() }));
    for (const { tag } of wiredSite.detectors) {
      const cells = line(sheets, tag);
      expect(Object.keys(cells)).toEqual([
        ...["At", "Tester", "L–L′", "L–N", "L–PE", "L′–N", "L′–PE", "N–PE", "Tester after", "By, on"],
      ]);
      expect(Object.values(cells).slice(1).join("").replaceAll("—", "")).toBe("");
    }
  });

  test("says of each pair what was found there, with who and when", () => {
    const entered = [
      entry("tester-before", "passed", 1),
      entry("L–N", "passed", 2),
      entry("L′–PE", "failed", 3),
    ];
    const sheets = drawn(
      testPages({ handover: record(entered), title, by: new Map(entered.map(({ id }) => [id, "R. O."])) }),
    );
    expect(line(sheets, wiredSite.detectors[0]!.tag)).toMatchObject({
      Tester: "works",
      "L–N": "dead",
      "L–PE": "",
      "L′–PE": "! live",
      "Tester after": "",
    });
    const texts = sheets.flatMap(wordsOf).map(({ text }) => text);
    expect(texts).toContain("! failed");
    expect(texts.some((text) => text.includes("R. O."))).toBe(true);
    // No line of its own for each detector besides.
    expect(texts.filter((text) => text === "Prove dead")).toHaveLength(1);
  });
});
