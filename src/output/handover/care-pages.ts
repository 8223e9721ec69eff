import {
  type CarePointName,
  type CareState,
  day,
  type Handover,
  type OccasionKind,
  roomTitle,
  say,
  stepTitles,
  type VisitRecord,
  type Words,
} from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { column } from "../wiring/schedules.ts";
import { verifyWords } from "../wiring/sheet-frame.ts";
import { figure } from "./check-rows.ts";
import { type Block, uprightPages } from "./upright-pages.ts";
import { whoWhen } from "./who-when.ts";

const trimWords: Readonly<Record<Exclude<OccasionKind, "yearly">, Words>> = {
  "trim-weeks": say`Trim visit, after four weeks`,
  "trim-summer": say`Trim visit, first summer`,
};

const pointWords: Readonly<Record<CarePointName, Words>> = {
  asked: say`People in the room content`,
  "false-on": say`Stays off with nobody there`,
  threshold: say`Comes on when it is needed`,
  sun: say`Not misled by the sun`,
  lens: say`Lenses clean and whole`,
  mask: say`Masks in place`,
  layout: say`Layout as on the plan`,
  "door-walk": say`Walk in the dark from the door`,
  delay: stepTitles.delay,
  "fans-on": say`Empty room dark, fans running`,
  "rcd-button": stepTitles["rcd-button"],
  emergency: stepTitles.emergency,
  inspection: say`Periodic inspection`,
};

/** Visits after hand-over: when they are due, and what was found on them beside what was found before. */
export function carePages(
  handover: Handover,
  of: {
    readonly title: Omit<SheetTitle, "page" | "pages">;
    readonly by: ReadonlyMap<string, string>;
  },
): readonly UnnumberedSheet[] {
  const { care } = handover;
  if (!care) return [];
  const begun = care.visits.filter(({ states }) => states.some(({ entry }) => entry));
  const verify = verifyWords([
    ...(care.inspection === undefined ? [] : (["IEC-60364-6-PERIODIC"] as const)),
    ...(care.emergency === undefined ? [] : (["EN-50172"] as const)),
  ]);
  return uprightPages({
    name: "after-hand-over",
    heading: say`After hand-over`,
    intro: [
      say`Days count from the first hand-over, ${day(care.handedOver)}. A yearly check takes some five minutes a room; waiting for delays and fans comes on top.`,
    ],
    blocks: [
      {
        heading: say`Due`,
        columns: [
          column(say`What`, 78),
          column(say`Day`, 30),
          column(say`Looked at`, 32, "end"),
          column(say`Failed`, 32, "end"),
        ],
        rows: [
          ...care.visits.map((visit) => [
            visitTitle(visit),
            day(visit.occasion.due),
            say`${visit.states.filter(({ entry }) => entry).length} of ${visit.states.length}`,
            String(visit.states.filter(({ check }) => check.verdict === "fail").length),
          ]),
          ...(care.emergency === undefined
            ? []
            : [[say`Emergency lighting, full test`, care.emergency, "", ""]]),
          ...(care.inspection === undefined ? [] : [[pointWords.inspection, care.inspection, "", ""]]),
        ],
      },
      ...begun.map((visit) => visitBlock(handover, visit, of.by)),
    ],
    title: of.title,
    notes: verify === undefined ? [] : [verify],
  });
}

const visitTitle = ({ occasion }: VisitRecord): Words =>
  occasion.kind === "yearly" ? say`Yearly check ${occasion.due.slice(0, 4)}` : trimWords[occasion.kind];

function visitBlock(handover: Handover, visit: VisitRecord, by: ReadonlyMap<string, string>): Block {
  return {
    heading: visitTitle(visit),
    columns: [
      column(say`Of`, 30),
      column(say`What`, 50),
      column(say`Before`, 18, "end"),
      column(say`Found`, 18, "end"),
      column("", 28),
      column(say`By, on`, 28),
    ],
    rows: visit.states
      .filter(({ entry }) => entry)
      .map((state) => [
        aboutWords(handover, state),
        pointWords[state.point.name],
        beforeWords(state),
        state.check.actual === undefined ? "" : figure(state.check.actual, state.check.unit),
        verdictWords(state),
        whoWhen(by.get(state.entry?.id ?? ""), state.entry?.time),
      ]),
  };
}

const beforeWords = ({ point: { result } }: CareState): Words =>
  result.kind === "reading" && result.stored ? figure(result.stored.value, result.unit) : "";

function verdictWords({ check, drifted }: CareState): Words {
  if (check.verdict === "fail") return say`! failed`;
  if (check.verdict === "not-proven") return say`not proven`;
  return drifted === undefined ? say`passed` : say`– drifted`;
}

function aboutWords({ site, wiring }: Handover, { point: { about } }: CareState): Words {
  switch (about.kind) {
    case "room":
      return roomTitle(site.rooms.find(({ id }) => id === about.id));
    case "detector": {
      const detector = site.detectors.find(({ id }) => id === about.id);
      return [detector?.tag, roomTitle(site.rooms.find(({ id }) => id === detector?.room))]
        .filter(Boolean)
        .join(", ");
    }
    case "luminaire":
      return site.luminaires.find(({ id }) => id === about.id)?.name || about.id;
    case "circuit":
      return (
        (wiring.kind === "built"
          ? wiring.found.circuits.find(({ id }) => id === about.id)?.name
          : undefined) ?? about.id
      );
    default:
      return say`the whole job`;
  }
}
