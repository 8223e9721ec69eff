import {
  day,
  type Handover,
  joined,
  type Said,
  type SourceId,
  say,
  sources,
  sourceTitle,
  type Words,
} from "#engine";
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
    heading: say`Open points`,
    blocks: [
      {
        heading: say`Written down`,
        columns: [
          column(say`What`, 84),
          column(say`Room`, 34),
          column(say`Who`, 22),
          column(say`Until`, 16),
          column(say`Closed`, 16),
        ],
        rows: of.owed.map(({ text, room, owner, due, closed }) => [text, room, owner, day(due), day(closed)]),
      },
      findingBlock(say`Found in the plan`, grave, say`Nothing that must or should be mended.`),
      findingBlock(
        say`Notes`,
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
    heading: say`Cautions`,
    blocks: [
      {
        heading: supply ? say`${supply.voltage} V kills` : say`Mains voltage kills`,
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
  const used = handover.sources.map(({ id, used: what }) => ({ id, what }));
  const unsure = used.filter(({ id }) => sources[id].verify).length;
  return uprightPages({
    name: "method",
    heading: say`Method, assumptions and sources`,
    blocks: [
      {
        heading: say`Method`,
        columns: [column("", 172)],
        rows: methodOf(site).map((sentence) => [sentence]),
      },
      {
        heading: say`Taken for granted`,
        columns: [column("", 150), column(say`Times`, 22, "end")],
        rows: assumptions.map(({ text, times }) => [text, String(times)]),
        empty: say`Nothing.`,
      },
      sourceBlock(used),
    ],
    title,
    notes:
      unsure === 0
        ? []
        : [
            say`Verify: ${unsure} of ${used.length} sources were not read in their own text. They are marked in the table.`,
          ],
  });
}

function methodOf({ defaults }: Handover["site"]): readonly Said[] {
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  const { margin } = defaults;
  return [
    say`What a detector sees is reckoned in three dimensions from its declared reach, less what walls, obstacles, doors and reveals hide. Doors count shut and with the leaf open; the worse of the two holds.`,
    say`Kept in hand of the declared reach: seated ${percent(margin.seated)}, towards ${percent(margin.towards)}, across ${percent(margin.across)}; ${percent(margin.spill)} more where neighbours must not be seen.`,
    say`Three demands: whoever comes in is noticed, whoever walks is noticed anywhere, whoever stays is kept in the light. Covered and uncovered area make up the whole; what is not shown to hold is said to be not proven, and never passes.`,
    say`A walk in the dark is counted from the door along the way that people walk until the light is on; at most ${defaults.darkWalkLimit} m is accepted.`,
    say`Wiring is judged circuit by circuit by the rules that are named beside each check. A result supports, and never replaces, the responsible person's judgement and the local code.`,
  ];
}

const certaintyWords = {
  read: say`text read`,
  secondary: say`through others`,
  "from-memory": say`from memory`,
  derived: say`derived here`,
  "common-practice": say`practice`,
} as const;

function sourceBlock(
  used: readonly {
    readonly id: SourceId;
    readonly what: readonly Said[];
  }[],
): Block {
  return {
    heading: say`Sources`,
    columns: [column(say`Source`, 74), column(say`Used for`, 60), column(say`Known`, 22), column("", 16)],
    rows: used.map(({ id, what }) => {
      const { edition, clause, certainty, verify } = sources[id];
      return [
        joined(
          [sourceTitle(id), edition, clause].filter((part) => part !== undefined),
          ", ",
        ),
        joined(what.length > 2 ? [...what.slice(0, 2), "…"] : what, "; "),
        certaintyWords[certainty],
        verify ? say`verify` : "",
      ];
    }),
  };
}

/** What was handed over when, and what each of it changed, with the state of now last; then what was changed and not yet handed over. */
export function revisionPages(
  { revisions, since }: Pick<Handover, "revisions" | "since">,
  title: Title,
): readonly UnnumberedSheet[] {
  const last = revisions.at(-1);
  const isLast = last?.letter === title.revision && last.date === title.date;
  const rows: readonly (readonly Words[])[] = revisions.map(({ letter, date, by, reason }) => [
    letter || "–",
    day(date),
    by,
    reason,
  ]);
  const now: readonly Words[] = [title.revision || "–", day(title.date), title.drawnBy, say`This pack`];
  return uprightPages({
    name: "revisions",
    heading: say`Revisions`,
    blocks: [
      {
        heading: "",
        columns: [
          column(say`Revision`, 24),
          column(say`Date`, 30),
          column(say`By`, 40),
          column(say`Reason`, 78),
        ],
        rows: isLast ? rows : [...rows, now],
      },
      ...revisions
        .slice(1)
        .map(({ letter, differences }) =>
          differenceBlock(say`Changed with revision ${letter}`, differences, notKept),
        ),
      ...(last && (since === undefined || since.length > 0 || !isLast)
        ? [differenceBlock(say`Changed since revision ${last.letter}`, since, notKept)]
        : []),
    ],
    title,
    notes: [],
  });
}

const notKept = say`Not known: what was handed over then was not kept.`;
