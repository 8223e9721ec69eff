import { joined, type Said, say, type Words } from "#engine";
import type { GroupPlan } from "./plan.ts";

/** What nobody knows of a group yet, each as a few words: the sheet is drawn all the same, and says so. */
export function openQuestions(group: GroupPlan): readonly Said[] {
  const { feed, detectors, buttons, line, loads } = group;
  const { device, found, board } = feed ?? {};
  const strangers = [
    ...detectors.flatMap(({ wired, foreign }) => (foreign === undefined ? [] : [wired.tag])),
    ...buttons.flatMap(({ designation, foreign }) => (foreign === undefined ? [] : [designation])),
    ...loads.flatMap(({ designation, foreign }) => (foreign === undefined ? [] : [designation])),
  ];
  const many = (ids: readonly Words[]): Said => joined(ids, ", ");
  const noSheet = detectors.filter(({ terminals }) =>
    terminals.some(({ declared }) => declared === "unknown"),
  );
  const lacking = detectors.flatMap(({ wired, terminals }) =>
    terminals.filter(({ declared }) => declared === "no").map(({ label }) => joined([wired.tag, label], " ")),
  );
  return [
    strangers.length > 0
      ? say`! ${many(strangers)}: on another circuit or line than this group. Do not connect`
      : undefined,
    feed === undefined && group.pack === undefined ? say`circuit that feeds the group` : undefined,
    feed && board === undefined ? say`board of the circuit` : undefined,
    device && (device.type === "unknown" || device.rating === undefined)
      ? say`type or rating of the protective device`
      : undefined,
    device && device.rcd === undefined ? say`whether there is an RCD, and of what current` : undefined,
    found && found.protectiveConductor === "unknown"
      ? say`whether a protective conductor is there (drawn as if)`
      : undefined,
    found?.protectiveConductor === "no"
      ? say`no protective conductor on record: bring one before anything else`
      : undefined,
    found && found.sharedNeutral === "unknown"
      ? say`whether the neutral serves other circuits too`
      : undefined,
    found?.sharedNeutral === "yes"
      ? say`! the neutral serves another circuit too: do not connect`
      : undefined,
    found && found.cable?.section === undefined && found.cable?.gauge === undefined
      ? say`section of the cable`
      : undefined,
    line.override === "unknown" && group.pack === undefined
      ? say`whether a switch stays beside the contacts`
      : undefined,
    noSheet.length > 0
      ? say`names of the terminals of ${many(noSheet.map(({ wired }) => wired.tag))}: see data sheet`
      : undefined,
    lacking.length > 0 ? say`! the data sheet lists no such terminal: ${many(lacking)}` : undefined,
    buttons.some(({ from }) => from === "unknown")
      ? say`what ${many(buttons.filter(({ from }) => from === "unknown").map(({ designation }) => designation))} connects`
      : undefined,
    loads.some(({ power }) => power === undefined)
      ? say`power of ${many(loads.filter(({ power }) => power === undefined).map(({ designation }) => designation))}`
      : undefined,
  ].filter((text) => text !== undefined);
}
