import {
  areaOf,
  type Finding,
  findingsOf,
  orderedFindings,
  type RoomCoverage,
  regionOf,
  reviewSite,
  roomTitle,
  type Site,
} from "#engine";
import { checkSettings, settingsJson, settingsText } from "./check-settings.ts";
import { checkWiring, wiringJson, wiringText } from "./check-wiring.ts";
import { type Command, exitOf, refused, textValues } from "./command.ts";
import { darkWalkJson, gapJson, interferenceJson, spillJson } from "./coverage-json.ts";
import { openJob } from "./open-job.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingJson, findingLines, rounded } from "./words.ts";

export const check: Command = {
  name: "check",
  usage: "check JOB [--rules CODE|FILE ...]",
  summary: "What is covered, missed and why, how circuits bear it, what to set, and what is to be mended.",
  help: [
    ["--rules CODE|FILE", "switch a pack of rules on: a shipped one, or your own (may stand more than once)"],
  ],
  options: { rules: { type: "string", multiple: true } },
  run: async ({ world, words, values }) => {
    const [file, ...more] = words;
    if (file === undefined || more.length > 0)
      return refused({
        code: "command-wrong",
        values: { reason: "it takes one job file", command: "check" },
      });
    const opened = await openJob(world, file);
    if ("problems" in opened) return opened;
    const { site } = opened;
    const checked = await checkSettings(world, opened, textValues(values, "rules"));
    if ("problems" in checked) return checked;
    const line = progressLine(world);
    const review = reviewSite(site, {
      progress: ({ done, total }) => line.show(`checked ${done} of ${total} rooms`),
    });
    line.clear();
    const wiring = await checkWiring(opened.job, site);
    const findings = orderedFindings(site, [
      ...findingsOf(opened.notes),
      ...review.findings,
      ...findingsOf(wiring?.problems ?? []),
      ...checked.settings.findings,
    ]);
    return {
      exit: exitOf(findings),
      json: {
        rooms: review.rooms.map((room) => roomJson(room, site)),
        ...wiringJson(wiring),
        ...settingsJson(checked),
        findings: findings.map(findingJson),
      },
      text: [
        roomTable(review.rooms, site),
        wiringText(wiring),
        settingsText(checked, site),
        summaryOf(findings),
      ]
        .filter((part) => part !== "")
        .join("\n\n"),
    };
  },
};

function roomJson(coverage: RoomCoverage, site: Site): unknown {
  const room = site.rooms.find((one) => one.id === coverage.room)!;
  const sizes = (part: RoomCoverage["demanded"]): unknown => ({
    walk: rounded(part.walk),
    hold: rounded(part.hold),
    catch: part.catch,
  });
  return {
    id: room.id,
    name: room.name,
    area: rounded(areaOf(regionOf(room.outline, room.holes))),
    demand: sizes(coverage.demanded),
    covered: sizes(coverage.covered),
    gaps: coverage.gaps.map((gap) => gapJson(gap, site)),
    spill: coverage.spill.map(spillJson),
    interference: coverage.interference.map(interferenceJson),
    darkWalk: coverage.darkWalks.map(darkWalkJson),
  };
}

function roomTable(rooms: readonly RoomCoverage[], site: Site): string {
  if (rooms.length === 0) return "The job has no rooms.";
  const share = (covered: number, demanded: number): string =>
    demanded === 0 ? "–" : `${((100 * covered) / demanded).toFixed(1)} %`;
  const lines = rooms.map((room) => {
    const walks = room.darkWalks.filter((walk) => walk.lit).map((walk) => walk.metres);
    const unlit = room.darkWalks.some((walk) => !walk.lit);
    return [
      roomTitle(site.rooms.find((one) => one.id === room.room)),
      String(
        site.detectors.filter((one) =>
          (one.controls.length > 0 ? one.controls : [one.room]).includes(room.room),
        ).length,
      ),
      share(room.covered.walk, room.demanded.walk),
      share(room.covered.hold, room.demanded.hold),
      `${room.covered.catch}/${room.demanded.catch}`,
      String(room.gaps.filter((gap) => !gap.tolerated).length),
      unlit ? "not lit" : walks.length === 0 ? "–" : `${Math.max(...walks).toFixed(1)} m`,
    ];
  });
  return aligned(
    ["Room", "Detectors", "Walk", "Hold", "Doors", "Gaps", "Dark walk"],
    lines,
    new Set([1, 2, 3, 4, 5, 6]),
  );
}

/** How much there is of each severity, then what it is; notes are counted only when there is something graver. */
export function summaryOf(findings: readonly Finding[]): string {
  const count = (severity: Finding["severity"]): number =>
    findings.filter((finding) => finding.severity === severity).length;
  if (findings.length === 0) return "Nothing to mend.";
  const head = `must ${count("must")}, should ${count("should")}, note ${count("note")}`;
  const graver = findings.filter((finding) => finding.severity !== "note");
  const shown = graver.length > 0 ? graver : findings;
  return `${head}\n\n${findingLines(shown)}`;
}
