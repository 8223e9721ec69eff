import { distinct, english, joined, type Said, type Site, say, type Words } from "#engine";
import type { Column } from "../setting-out/table.ts";
import { conductorWords, lengthWords, nameOf, sizeWords } from "./cable-rows.ts";
import { type ConductorKind, colourWords, markings } from "./conductors.ts";
import { contactorRows } from "./contactor-rows.ts";
import { ranges } from "./designations.ts";
import type { GroupPlan, PlannedDetector, Terminal, WiringPlan } from "./plan.ts";
import type { Table } from "./table-sheets.ts";

/** A column of a schedule. */
export const column = (head: Words, width: number, align: Column["align"] = "start"): Column => ({
  head,
  width,
  align,
});

/** Every terminal of every detector, button and contactor, with the conductor that belongs on it and a space to tick it off. */
export function terminalSchedule({ groups, built, names }: WiringPlan): Table {
  const rows = groups.flatMap((group) => [
    ...group.detectors.flatMap((planned) => [
      ...usedTerminals(planned).map((terminal) => [
        planned.wired.tag,
        terminal.declared === "yes" ? terminal.label : joined([terminal.label, "*"], " "),
        terminal.conductor === "unknown" ? say`unknown` : markings[terminal.conductor],
        terminal.conductor === "unknown" ? "" : colourWords(terminal.conductor, group.supply.region),
        goal({ group, planned, names }, terminal, built.model.circuits),
        cablesAt(group, planned.wired.id, terminal),
        "",
      ]),
      ...freeTerminals(planned),
    ]),
    ...group.buttons.flatMap(({ button, designation, from, foreign }) => [
      [
        designation,
        "1",
        from === "unknown" ? say`unknown` : markings[from],
        from === "unknown" ? "" : colourWords(from, group.supply.region),
        from === "unknown"
          ? say`L or N: see data sheet`
          : foreign === undefined
            ? (group.feed?.circuit.name ?? say`unknown`)
            : say`! another circuit or line`,
        buttonCable(group, button.id),
        "",
      ],
      [
        designation,
        "2",
        markings.button,
        colourWords("button", group.supply.region),
        group.detectors
          .filter(({ wired }) => button.detectors.includes(wired.id))
          .map(({ wired }) => wired.tag)
          .join(", "),
        buttonCable(group, button.id),
        "",
      ],
    ]),
    ...contactorRows(group, names),
  ]);
  return {
    columns: [
      column(say`Device`, 18),
      column(say`Terminal`, 21),
      column(say`Conductor`, 22),
      column(say`Colour`, 40),
      column(say`Goes to`, 45),
      column(say`Cable`, 22),
      column(say`Done`, 12),
    ],
    rows,
  };
}

type UsedTerminal = Terminal & { readonly conductor: ConductorKind };

const usedTerminals = ({ terminals }: PlannedDetector): readonly UsedTerminal[] =>
  terminals.filter((one): one is UsedTerminal => one.conductor !== "none");

/** Terminals that stay empty, in one row. */
function freeTerminals({ wired, terminals }: PlannedDetector): readonly (readonly Words[])[] {
  const free = terminals.filter(({ conductor }) => conductor === "none").map(({ label }) => label);
  return free.length === 0
    ? []
    : [[wired.tag, say`others`, "", "", say`left empty: ${joined(free, ", ")}`, "", ""]];
}

export const terminalNotes: readonly Said[] = [
  say`* not on record for this terminal: its name, or whether it is there at all, is on the data sheet of the device.`,
];

const buttonCable = (group: GroupPlan, button: string): Words =>
  group.cables.find(({ to, conductors }) => to === button && conductors.includes("button"))?.designation ??
  say`none here`;

/** Cables that end at a device and carry the conductor of a terminal. */
function cablesAt(group: GroupPlan, device: string, { conductor }: UsedTerminal): string {
  return group.cables
    .filter(
      ({ from, to, conductors }) =>
        (from === device || to === device) && conductors.some((one) => one === conductor),
    )
    .map(({ designation }) => designation)
    .join(", ");
}

function goal(
  {
    group,
    planned,
    names,
  }: { readonly group: GroupPlan; readonly planned: PlannedDetector; readonly names: WiringPlan["names"] },
  { kind }: UsedTerminal,
  circuits: WiringPlan["built"]["model"]["circuits"],
): Words {
  const others = (wanted: (one: PlannedDetector) => boolean): string =>
    group.detectors
      .filter((one) => one !== planned && wanted(one))
      .map(({ wired }) => wired.tag)
      .join(", ");
  const { line } = planned.wired;
  switch (kind) {
    case "line-in":
    case "neutral":
      if (group.pack) return names.of(group.pack.id);
      return line.kind === "line"
        ? (circuits.find(({ id }) => id === line.circuit)?.name ?? say`unknown`)
        : say`unknown`;
    case "protective-conductor":
      return say`looped through`;
    case "switched-line":
      if (group.pack) return names.of(group.pack.id);
      return joined(
        [
          ...group.loads.map(({ designation }) => designation),
          ...(planned.wired.output === undefined ? [] : [others(({ wired }) => wired.output !== undefined)]),
        ].filter((text) => english(text) !== ""),
        ", ",
      );
    case "push-button":
      return joined(
        group.buttons
          .filter(({ button }) => button.detectors.includes(planned.wired.id))
          .map(({ designation }) => designation),
        ", ",
      );
    case "extension-in":
      return others(({ wired }) => wired.role === "slave");
    case "extension-out":
      return others(({ wired }) => wired.role !== "slave");
    case "control-plus":
    case "control-minus":
      return joined(
        [
          ...group.loads.map(({ designation }) => designation),
          others(({ wired }) => wired.output !== undefined),
        ].filter((text) => english(text) !== ""),
        ", ",
      );
  }
}

/** Every cable of the plan, one row each. */
export function cableSchedule({ groups, names }: WiringPlan): Table {
  return {
    columns: [
      column(say`Cable`, 15),
      column(say`From`, 19),
      column(say`To`, 17),
      column(say`Circuit`, 30),
      column(say`Cores`, 13, "end"),
      column(say`Conductors`, 47),
      column(say`Section`, 20, "end"),
      column("≈ m", 19, "end"),
    ],
    rows: groups.flatMap((group) =>
      group.cables.map((cable) => [
        cable.designation,
        nameOf(cable.from, names),
        nameOf(cable.to, names),
        group.pack ? say`low voltage` : (group.feed?.circuit.name ?? say`unknown`),
        String(cable.conductors.length),
        conductorWords(cable.conductors, group.supply.region),
        sizeWords(cable.size),
        lengthWords(cable.length),
      ]),
    ),
  };
}

export const cableNotes: readonly Said[] = [
  say`Lengths are estimates from the plan, along the walls' directions, from the top of the board along ceilings and above doors wherever the circuit's route was found, with 0.3 m at each end and a tenth for bends and waste: measure before cutting. Existing cables that can stay are not told apart from new ones.`,
  say`≥ where nobody entered the section: the smallest with which every check of the circuit passes.`,
];

/** What was taken for granted and what is open, as a table. */
export function assumptionList(site: Site, { built, leftOut, names }: WiringPlan): Table {
  const known = new Map<string, Words>([
    ...site.detectors.map(({ id, tag }) => [id, tag || id] as const),
    ...site.luminaires.map(({ id }) => [id, names.of(id)] as const),
    ...site.switches.map(({ id }) => [id, names.of(id)] as const),
    ...built.model.circuits.map(({ id, name }) => [id, name] as const),
    ...built.model.boards.map(({ id, name }) => [id, name] as const),
  ]);
  return {
    columns: [column("", 10, "end"), column(say`Taken for granted`, 100), column(say`Where`, 70)],
    rows: [
      ...built.assumptions.map(({ text, records }) => [
        text,
        // Names in runs, so that sixty luminaires take a line and not a page.
        ranges(distinct(records.flatMap((id) => known.get(id) ?? []))),
      ]),
      ...(leftOut.length > 0
        ? [[say`On no drawing: nobody knows what they switch, or whom they signal to`, ranges(leftOut)]]
        : []),
    ].map((row, i) => [String(i + 1), ...row]),
  };
}
