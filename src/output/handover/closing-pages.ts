import { type Handover, sources } from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { cautions } from "../wiring/caution-band.ts";
import { column } from "../wiring/schedules.ts";
import { findingBlock } from "./check-rows.ts";
import { differenceBlock } from "./difference-rows.ts";
import { type Block, uprightPages } from "./upright-pages.ts";

type Title = Omit<SheetTitle, "page" | "pages">;

/** Something that somebody still owes, as entered on site. */
export interface OwedPoint {
  readonly text: string;
  readonly room: string;
  readonly owner: string;
  readonly due: string;
  /** The day on which it was closed; "" while it is open. */
  readonly closed: string;
}

/** What is still open: what people wrote down, then what the program found; notes last. */
export function openPages(
  { findings }: Handover,
  of: { readonly title: Title; readonly owed: readonly OwedPoint[] },
): readonly UnnumberedSheet[] {
  const grave = findings.filter(({ severity }) => severity !== "note");
  return uprightPages({
    name: "open-points",
    heading: "Open points",
    blocks: [
      {
        heading: "Written down",
        columns: [
          column("What", 84),
          column("Room", 34),
          column("Who", 22),
          column("Until", 16),
          column("Closed", 16),
        ],
        rows: of.owed.map(({ text, room, owner, due, closed }) => [text, room, owner, due, closed]),
      },
      findingBlock("Found in the plan", grave, "Nothing that must or should be mended."),
      findingBlock(
        "Notes",
        findings.filter(({ severity }) => severity === "note"),
      ),
    ],
    title: of.title,
    notes: [],
  });
}

/** Cautions: what can hurt, and what these papers are not. */
export function cautionPages(handover: Handover, title: Title): readonly UnnumberedSheet[] {
  const supply = handover.order.groups[0]?.supply;
  const sentences = cautions({ region: supply?.region ?? "IEC" });
  return uprightPages({
    name: "cautions",
    heading: "Cautions",
    blocks: [
      {
        heading: supply ? `${supply.voltage} V kills` : "Mains voltage kills",
        columns: [column("", 8, "end"), column("", 164)],
        rows: sentences.map((sentence, i) => [String(i + 1), sentence]),
      },
    ],
    title,
    notes: [],
  });
}

/** How it was calculated, what was taken for granted, and what all of it rests on. */
export function methodPages(handover: Handover, title: Title): readonly UnnumberedSheet[] {
  const { assumptions, site } = handover;
  const used = handover.sources.map(({ id, used: what }) => ({ source: sources[id], what }));
  const unsure = used.filter(({ source }) => source.verify).length;
  return uprightPages({
    name: "method",
    heading: "Method, assumptions and sources",
    blocks: [
      {
        heading: "Method",
        columns: [column("", 172)],
        rows: methodOf(site).map((sentence) => [sentence]),
      },
      {
        heading: "Taken for granted",
        columns: [column("", 150), column("Times", 22, "end")],
        rows: assumptions.map(({ text, times }) => [text, String(times)]),
        empty: "Nothing.",
      },
      sourceBlock(used),
    ],
    title,
    notes:
      unsure === 0
        ? []
        : [
            `Verify: ${unsure} of ${used.length} sources were not read in their own text. They are marked in the table.`,
          ],
  });
}

function methodOf({ defaults }: Handover["site"]): readonly string[] {
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  const { margin } = defaults;
  return [
    "What a detector sees is reckoned in three dimensions from its declared reach, less what walls, obstacles, doors and reveals hide. Doors count shut and with the leaf open; the worse of the two holds.",
    `Kept in hand of the declared reach: seated ${percent(margin.seated)}, towards ${percent(margin.towards)}, across ${percent(margin.across)}; ${percent(margin.spill)} more where neighbours must not be seen.`,
    "Three demands: whoever comes in is noticed, whoever walks is noticed anywhere, whoever stays is kept in the light. Covered and uncovered area make up the whole; what is not shown to hold is said to be not proven, and never passes.",
    `A walk in the dark is counted from the door along the way that people walk until the light is on; at most ${defaults.darkWalkLimit} m is accepted.`,
    "Wiring is judged circuit by circuit by the rules that are named beside each check. A result supports, and never replaces, the responsible person's judgement and the local code.",
  ];
}

const certaintyWords = {
  read: "read",
  secondary: "through others",
  "from-memory": "from memory",
  derived: "derived here",
  "common-practice": "practice",
} as const;

function sourceBlock(
  used: readonly {
    readonly source: (typeof sources)[keyof typeof sources];
    readonly what: readonly string[];
  }[],
): Block {
  return {
    heading: "Sources",
    columns: [column("Source", 74), column("Used for", 60), column("Known", 22), column("", 16)],
    rows: used.map(({ source, what }) => [
      [source.title, source.edition, source.clause].filter(Boolean).join(", "),
      what.slice(0, 2).join("; ") + (what.length > 2 ? "; …" : ""),
      certaintyWords[source.certainty],
      source.verify ? "verify" : "",
    ]),
  };
}

/** What was handed over when, and what each of it changed, with the state of now last; then what was changed and not yet handed over. */
export function revisionPages(
  { revisions, since }: Pick<Handover, "revisions" | "since">,
  title: Title,
): readonly UnnumberedSheet[] {
  const last = revisions.at(-1);
  const isLast = last?.letter === title.revision && last.date === title.date;
  const rows = revisions.map(({ letter, date, by, reason }) => [letter || "–", date, by, reason]);
  const now = [title.revision || "–", title.date, title.drawnBy, "This pack"];
  return uprightPages({
    name: "revisions",
    heading: "Revisions",
    blocks: [
      {
        heading: "",
        columns: [column("Revision", 24), column("Date", 30), column("By", 40), column("Reason", 78)],
        rows: isLast ? rows : [...rows, now],
      },
      ...revisions
        .slice(1)
        .map(({ letter, differences }) =>
          differenceBlock(`Changed with revision ${letter}`, differences, notKept),
        ),
      ...(last && (since === undefined || since.length > 0 || !isLast)
        ? [differenceBlock(`Changed since revision ${last.letter}`, since, notKept)]
        : []),
    ],
    title,
    notes: [],
  });
}

const notKept = "Not known: what was handed over then was not kept.";
