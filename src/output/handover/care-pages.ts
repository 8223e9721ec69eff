import {
  type CarePointName,
  type CareState,
  type Handover,
  type OccasionKind,
  roomTitle,
  type VisitRecord,
} from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { column } from "../wiring/schedules.ts";
import { verifyWords } from "../wiring/sheet-frame.ts";
import { figure } from "./check-rows.ts";
import { type Block, uprightPages } from "./upright-pages.ts";

const visitWords: Readonly<Record<OccasionKind, string>> = {
  "trim-weeks": "Trim visit, after four weeks",
  "trim-summer": "Trim visit, first summer",
  yearly: "Yearly check",
};

const pointWords: Readonly<Record<CarePointName, string>> = {
  asked: "People in the room content",
  "false-on": "Stays off with nobody there",
  threshold: "Comes on when it is needed",
  sun: "Not misled by the sun",
  lens: "Lenses clean and whole",
  mask: "Masks in place",
  layout: "Layout as on the plan",
  "door-walk": "Walk in the dark from the door",
  delay: "Off delay by stop-watch",
  "fans-on": "Empty room dark, fans running",
  "rcd-button": "Test button of the RCD",
  emergency: "Emergency luminaire, breaker open",
  inspection: "Periodic inspection",
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
    heading: "After hand-over",
    intro: [
      `Days count from the first hand-over, ${care.handedOver}. A yearly check takes some five minutes a room; waiting for delays and fans comes on top.`,
    ],
    blocks: [
      {
        heading: "Due",
        columns: [
          column("What", 80),
          column("Day", 30),
          column("Looked at", 32, "end"),
          column("Failed", 30, "end"),
        ],
        rows: [
          ...care.visits.map((visit) => [
            visitTitle(visit),
            visit.occasion.due,
            `${visit.states.filter(({ entry }) => entry).length} of ${visit.states.length}`,
            String(visit.states.filter(({ check }) => check.verdict === "fail").length),
          ]),
          ...(care.emergency === undefined
            ? []
            : [["Emergency lighting, full test", care.emergency, "", ""]]),
          ...(care.inspection === undefined ? [] : [["Periodic inspection", care.inspection, "", ""]]),
        ],
      },
      ...begun.map((visit) => visitBlock(handover, visit, of.by)),
    ],
    title: of.title,
    notes: verify === undefined ? [] : [verify],
  });
}

const visitTitle = ({ occasion }: VisitRecord): string =>
  occasion.kind === "yearly" ? `${visitWords.yearly} ${occasion.due.slice(0, 4)}` : visitWords[occasion.kind];

function visitBlock(handover: Handover, visit: VisitRecord, by: ReadonlyMap<string, string>): Block {
  return {
    heading: visitTitle(visit),
    columns: [
      column("Of", 38),
      column("What", 50),
      column("Before", 18, "end"),
      column("Found", 18, "end"),
      column("", 20),
      column("By, on", 28),
    ],
    rows: visit.states
      .filter(({ entry }) => entry)
      .map((state) => [
        aboutWords(handover, state),
        pointWords[state.point.name],
        beforeWords(state),
        state.check.actual === undefined ? "" : figure(state.check.actual, state.check.unit),
        verdictWords(state),
        [by.get(state.entry?.id ?? "") ?? "", state.entry?.time.slice(0, 10)].filter(Boolean).join(", "),
      ]),
  };
}

const beforeWords = ({ point: { result } }: CareState): string =>
  result.kind === "reading" && result.stored ? figure(result.stored.value, result.unit) : "";

function verdictWords({ check, drifted }: CareState): string {
  if (check.verdict === "fail") return "! failed";
  if (check.verdict === "not-proven") return "not proven";
  return drifted === undefined ? "passed" : "– drifted";
}

function aboutWords({ site, wiring }: Handover, { point: { about } }: CareState): string {
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
      return "the whole job";
  }
}
