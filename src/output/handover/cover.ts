import { type Handover, type Said, say, type Words } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken, emOf, fitted } from "../drawing/lettering.ts";
import type { Mark } from "../drawing/mark.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { line, words } from "../wiring/symbols.ts";
import { uprightFrame, uprightFrameMarks, uprightSize } from "../wiring/table-sheets.ts";
import { testStanding } from "./test-pages.ts";

export interface CoverInput {
  readonly handover: Handover;
  readonly title: Omit<SheetTitle, "page" | "pages">;
}

const left = uprightFrame.left + 14;
const width = uprightFrame.right - 14 - left;

/** The first page: whose building, what is in it, and how far it has come. */
export function cover({ handover, title }: CoverInput): UnnumberedSheet {
  const { speak } = title;
  const name = broken(title.job || speak(say`Job`), width * 0.92, 7);
  const facts = factsOf(handover);
  const nameTop = 62;
  const rule = nameTop + name.length * 1.25 * emOf(7) + 2;
  const placeTop = rule + 12;
  const places = [title.site, title.client]
    .filter((one) => one.trim() !== "")
    .flatMap((one) => broken(one, width, 5));
  const factsTop = placeTop + places.length * 8 + 12;
  return (page, pages) => ({
    name: "cover",
    title: title.job,
    width: uprightSize[0],
    height: uprightSize[1],
    marks: [
      words([left, 46], speak(say`Presence detection: hand-over`), { size: 5, colour: muted }),
      ...name.map((text, i) =>
        words([left, nameTop + i * 1.25 * emOf(7)], text, { size: 7, weight: "semibold" }),
      ),
      line([left, rule], [left + width, rule], { width: 0.7, colour: ink }),
      ...places.map((text, i) => words([left, placeTop + i * 8], text, { size: 5 })),
      ...facts.flatMap(([label, value], i): readonly Mark[] => [
        words([left, factsTop + i * 8], speak(label), { size: 3.5, colour: muted }),
        words([left + 58, factsTop + i * 8], fitted(speak(value), width - 58, { size: 3.5 }), { size: 3.5 }),
      ]),
      ...uprightFrameMarks({ ...title, page, pages }, undefined),
    ],
  });
}

function factsOf(handover: Handover): readonly (readonly [Said, Words])[] {
  const { site, rooms, findings, wiring } = handover;
  const count = (severity: (typeof findings)[number]["severity"]): number =>
    findings.filter((finding) => finding.severity === severity).length;
  const lit = rooms.filter(({ detectors }) => detectors.length > 0).length;
  return [
    [
      say`Storeys`,
      String(site.storeys.filter(({ id }) => site.rooms.some((room) => room.storey === id)).length),
    ],
    [say`Rooms`, say`${rooms.length}, of which ${lit} with detectors`],
    [say`Detectors`, String(site.detectors.length)],
    [say`Luminaires`, String(site.luminaires.length)],
    [say`Wiring`, wiring.kind === "built" ? say`${wiring.found.circuits.length} circuits` : say`not drawn`],
    [say`Open points`, say`must ${count("must")}, should ${count("should")}`],
    [say`Tests`, standingOf(handover)],
  ];
}

function standingOf(handover: Handover): Said {
  const standing = testStanding(handover);
  if (standing === "planned") return say`none entered`;
  const behind = handover.tests.filter(({ entries }) => entries.length > 0).length;
  return standing === "tested"
    ? say`all steps entered`
    : say`${behind} of ${handover.tests.length} steps entered`;
}
