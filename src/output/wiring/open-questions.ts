import type { GroupPlan } from "./plan.ts";

/** What nobody knows of a group yet, each as a few words: the sheet is drawn all the same, and says so. */
export function openQuestions(group: GroupPlan): readonly string[] {
  const { feed, detectors, buttons, line, loads } = group;
  const { device, found, board } = feed ?? {};
  const strangers = [
    ...detectors.flatMap(({ wired, foreign }) => (foreign === undefined ? [] : [wired.tag])),
    ...buttons.flatMap(({ designation, foreign }) => (foreign === undefined ? [] : [designation])),
    ...loads.flatMap(({ designation, foreign }) => (foreign === undefined ? [] : [designation])),
  ];
  const many = (ids: readonly string[]): string => ids.join(", ");
  const noSheet = detectors.filter(({ terminals }) =>
    terminals.some(({ declared }) => declared === "unknown"),
  );
  const lacking = detectors.flatMap(({ wired, terminals }) =>
    terminals.filter(({ declared }) => declared === "no").map(({ label }) => `${wired.tag} ${label}`),
  );
  return [
    strangers.length > 0
      ? `! ${many(strangers)}: on another circuit or line than this group. Do not connect`
      : undefined,
    feed === undefined && group.pack === undefined ? "circuit that feeds the group" : undefined,
    feed && board === undefined ? "board of the circuit" : undefined,
    device && (device.type === "unknown" || device.rating === undefined)
      ? "type or rating of the protective device"
      : undefined,
    device && device.rcd === undefined ? "whether there is an RCD, and of what current" : undefined,
    found && found.protectiveConductor === "unknown"
      ? "whether a protective conductor is there (drawn as if)"
      : undefined,
    found?.protectiveConductor === "no"
      ? "no protective conductor on record: bring one before anything else"
      : undefined,
    found && found.sharedNeutral === "unknown" ? "whether the neutral serves other circuits too" : undefined,
    found?.sharedNeutral === "yes" ? "! the neutral serves another circuit too: do not connect" : undefined,
    found && found.cable?.section === undefined && found.cable?.gauge === undefined
      ? "section of the cable"
      : undefined,
    line.override === "unknown" && group.pack === undefined
      ? "whether a switch stays beside the contacts"
      : undefined,
    noSheet.length > 0
      ? `names of the terminals of ${many(noSheet.map(({ wired }) => wired.tag))}: see data sheet`
      : undefined,
    lacking.length > 0 ? `! the data sheet lists no such terminal: ${many(lacking)}` : undefined,
    buttons.some(({ from }) => from === "unknown")
      ? `what ${many(buttons.filter(({ from }) => from === "unknown").map(({ designation }) => designation))} connects`
      : undefined,
    loads.some(({ power }) => power === undefined)
      ? `power of ${many(loads.filter(({ power }) => power === undefined).map(({ designation }) => designation))}`
      : undefined,
  ].filter((text) => text !== undefined);
}
