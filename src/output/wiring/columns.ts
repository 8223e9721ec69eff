import { detectorMarks } from "../drawing/detector-mark.ts";
import { broken, fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import { type ConductorKind, markings } from "./conductors.ts";
import type { Designations } from "./designations.ts";
import type { GroupPlan, LoadGroup, PlannedButton, PlannedDetector, Terminal } from "./plan.ts";
import {
  box,
  coil,
  device,
  latchingSwitch,
  line,
  luminaire,
  mainContact,
  pushButton,
  terminal,
  uprightContact,
  words,
} from "./symbols.ts";

/** A conductor from an apparatus to one of the rails above or below it. */
export interface Tap {
  /** "unknown": no rail; the sheet writes the word. */
  readonly conductor: ConductorKind;
  /** Which of several rails of the same kind: buttons that speak to different detectors never meet. */
  readonly rail?: number;
  /** Where it comes from if that is another circuit or line than the group's: it is written there, and meets no rail. */
  readonly foreign?: string;
  readonly side: "above" | "below";
  readonly x: Millimetres;
}

/** Symbols that a column shows, for the legend. */
export type SymbolKey =
  | "detector"
  | "contact"
  | "luminaire"
  | "push-button"
  | "latching-switch"
  | "coil"
  | "main-contact"
  | "breaker"
  | "fuse"
  | "residual"
  | "unknown-device"
  | "terminal"
  | "joint"
  | "location"
  | "warning";

/** One apparatus of the drawing: its marks with the upper left corner at a place, and what it is connected to. */
export interface Column {
  readonly shows: readonly SymbolKey[];
  readonly taps: readonly Tap[];
  readonly marks: (at: PaperPoint) => readonly Mark[];
}

export const columnWidth: Millimetres = 46;
export const columnPitch: Millimetres = 50;
export const columnHeight: Millimetres = 36;

const aboveAt: Readonly<Partial<Record<Terminal["kind"], Millimetres>>> = {
  "line-in": 6,
  neutral: 16,
  "protective-conductor": 26,
};
const belowAt: Readonly<Partial<Record<Terminal["kind"], Millimetres>>> = {
  "switched-line": 6,
  "push-button": 20,
  "extension-in": 31,
  "extension-out": 40,
};
const shortLabels: Readonly<Partial<Record<Terminal["kind"], string>>> = {
  "extension-in": "in",
  "extension-out": "out",
};

/** All apparatus of a group from left to right. */
export function columnsOf(group: GroupPlan, names: Designations): readonly Column[] {
  const rails = buttonRails(group);
  return [
    ...group.detectors.map((one) => detectorColumn(one, rails.get(one.wired.id) ?? 0, names)),
    ...group.buttons.map((one) => buttonColumn(one, rails.get(one.button.detectors[0] ?? "") ?? 0, names)),
    ...(group.line.override === "yes" ? [besideColumn()] : []),
    ...group.mains.map((one) =>
      contactorColumn(
        { designation: names.of(one.id), part: "main", name: one.name },
        group.feed?.line ?? "unknown",
      ),
    ),
    ...group.coils.map((one) =>
      contactorColumn({ designation: names.of(one.id), part: "coil", name: one.name }, "neutral"),
    ),
    ...group.loads.map((load) => loadColumn(load, group, names)),
    ...group.emergency.map((load) => loadColumn(load, group, names)),
  ];
}

/** "! L1 of F2": a conductor of another circuit. */
const foreignWords = (conductor: ConductorKind, device: string, names: Designations): string =>
  `! ${markings[conductor]} of ${names.of(device)}`;

/** Detectors that share a button, however many steps apart, share its conductor. */
function buttonRails({ buttons }: GroupPlan): ReadonlyMap<string, number> {
  const sets: Set<string>[] = [];
  for (const { button } of buttons) {
    const touching = sets.filter((set) => button.detectors.some((id) => set.has(id)));
    const merged = new Set([...button.detectors, ...touching.flatMap((set) => [...set])]);
    for (const set of touching) sets.splice(sets.indexOf(set), 1);
    sets.push(merged);
  }
  return new Map(sets.flatMap((set, i) => [...set].map((id) => [id, i] as const)));
}

function detectorColumn(planned: PlannedDetector, rail: number, names: Designations): Column {
  const { wired, terminals, room } = planned;
  const placed = terminals.flatMap((one) => {
    const above = aboveAt[one.kind];
    const x = above ?? belowAt[one.kind];
    return x === undefined ? [] : [{ one, x, side: above === undefined ? "below" : "above" } as const];
  });
  const potentialFree = wired.contact?.kind === "potential-free";
  const said = [
    wired.role === "alone" ? undefined : wired.role,
    terminals.some(({ declared }) => declared === "unknown") ? "terminals: see data sheet" : undefined,
    potentialFree ? "potential-free contact" : undefined,
  ].filter((text) => text !== undefined);
  const missing = terminals.some(({ declared }) => declared === "no") || planned.foreign !== undefined;
  return {
    shows: [
      "detector",
      "terminal",
      ...(wired.output === undefined ? [] : (["contact"] as const)),
      ...(missing ? (["warning"] as const) : []),
    ],
    taps: placed.flatMap(({ one, x, side }) =>
      one.conductor === "none"
        ? []
        : [
            {
              conductor: one.conductor,
              side,
              x,
              ...(one.conductor === "button" ? { rail } : {}),
              ...(planned.foreign !== undefined && (one.kind === "line-in" || one.kind === "neutral")
                ? { foreign: foreignWords(one.conductor, planned.foreign, names) }
                : {}),
            },
          ],
    ),
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...(wired.output === undefined ? [] : uprightContact(left + 6, top, top + columnHeight)),
      ...detectorMarks([left + 19, top + 12], {
        turn: 0,
        hears: (planned.model?.zones.sound?.length ?? 0) > 0,
      }),
      words([left + 24.5, top + 13.6], fitted(wired.tag, 20, { size: 3.5, weight: "semibold" }), {
        size: 3.5,
        weight: "semibold",
      }),
      ...[...broken(room, columnWidth - 11, 2.5), ...said]
        .slice(0, 3)
        .map((text, i) =>
          words([left + 9.5, top + 20.5 + i * 3.9], fitted(text, columnWidth - 11, { size: 2.5 })),
        ),
      ...placed.flatMap(({ one, x, side }): readonly Mark[] => {
        const y = side === "above" ? top : top + columnHeight;
        const label = `${one.declared === "no" ? "! " : ""}${shortLabels[one.kind] ?? one.label}`;
        const onContact = x === 6 && wired.output !== undefined;
        return [
          words([left + x + (onContact ? 1.6 : 0), side === "above" ? y + 4.6 : y - 2.2], label, {
            anchor: onContact ? "start" : "middle",
          }),
          terminal([left + x, y]),
        ];
      }),
    ],
  };
}

/** Lines of text in a column to the right of its symbol. */
function captions(
  [left, top]: PaperPoint,
  head: string,
  texts: readonly string[],
  from: Millimetres,
): readonly Mark[] {
  const width = columnWidth - from - 1.5;
  const lines = texts
    .flatMap((text) => broken(text, width, 2.5))
    .map((text) => fitted(text, width, { size: 2.5 }));
  const shown =
    lines.length > 6 ? [...lines.slice(0, 5), fitted(`${lines[5]} …`, width, { size: 2.5 })] : lines;
  return [
    words([left + from, top + 9.4], fitted(head, width, { size: 2.5, weight: "semibold" }), {
      weight: "semibold",
    }),
    ...shown.map((text, i) => words([left + from, top + 13.3 + i * 3.9], text)),
  ];
}

function buttonColumn(
  { button, designation, room, from, foreign }: PlannedButton,
  rail: number,
  names: Designations,
): Column {
  const latching = button.kind === "latching-switch";
  const lamp = button.glowLamp
    ? `lamp ${Number((button.glowLamp.current * 1000).toPrecision(2))} mA, ${button.glowLamp.ownNeutral === "yes" ? "own neutral" : button.glowLamp.ownNeutral === "no" ? "no own neutral" : "own neutral unknown"}`
    : undefined;
  return {
    shows: [
      latching ? "latching-switch" : "push-button",
      "terminal",
      ...(latching || foreign !== undefined ? (["warning"] as const) : []),
    ],
    taps: [
      {
        conductor: from,
        side: "above",
        x: 10,
        ...(foreign === undefined ? {} : { foreign: foreignWords(from, foreign, names) }),
      },
      { conductor: "button", side: "below", x: 10, rail },
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...(latching ? latchingSwitch : pushButton)(left + 10, top, top + columnHeight),
      ...captions(
        [left, top],
        designation,
        [
          latching ? "! latching switch, not a push-button" : "push-button",
          room,
          ...(from === "unknown" ? ["connects L or N: see data sheet"] : []),
          ...(lamp ? [lamp] : []),
        ],
        14,
      ),
      terminal([left + 10, top]),
      terminal([left + 10, top + columnHeight]),
    ],
  };
}

/** A switch that stays beside the contacts. */
function besideColumn(): Column {
  return {
    shows: ["latching-switch", "terminal"],
    taps: [
      { conductor: "unknown", side: "above", x: 10 },
      { conductor: "switched", side: "below", x: 10 },
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...latchingSwitch(left + 10, top, top + columnHeight),
      ...captions(
        [left, top],
        "switch",
        ["stays beside the contact: what it switches on, no detector switches off"],
        14,
      ),
      terminal([left + 10, top]),
      terminal([left + 10, top + columnHeight]),
    ],
  };
}

function contactorColumn(
  one: { readonly designation: string; readonly part: "main" | "coil"; readonly name: string },
  above: ConductorKind,
): Column {
  const main = one.part === "main";
  return {
    shows: [main ? "main-contact" : "coil", "terminal"],
    taps: [
      { conductor: above, side: "above", x: 10 },
      { conductor: "switched", side: "below", x: 10 },
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...(main ? mainContact : coil)(left + 10, top, top + columnHeight),
      ...captions([left, top], one.designation, [main ? "main contact" : "coil", one.name], 16),
      words([left + 12, top + 4.6], main ? "1" : "A2"),
      words([left + 12, top + columnHeight - 2.2], main ? "2" : "A1"),
      terminal([left + 10, top]),
      terminal([left + 10, top + columnHeight]),
    ],
  };
}

function loadColumn(load: LoadGroup, group: GroupPlan, names: Designations): Column {
  const unswitched = load.emergency !== undefined;
  const line: ConductorKind = load.emergency === "unknown" ? "unknown" : (group.feed?.line ?? "unknown");
  const below = !unswitched || load.emergency === "after-contact";
  const elsewhere = (conductor: ConductorKind): Pick<Tap, "foreign"> =>
    load.foreign === undefined ? {} : { foreign: foreignWords(conductor, load.foreign, names) };
  const power = load.power === undefined ? "power unknown" : `${Number(load.power.toPrecision(3))} W each`;
  const drivers =
    load.drivers === undefined
      ? "drivers unknown"
      : `${load.drivers} driver${load.drivers === 1 ? "" : "s"} each`;
  return {
    shows: ["luminaire", "terminal", ...(load.foreign === undefined ? [] : (["warning"] as const))],
    taps: [
      ...(below ? [] : [{ conductor: line, side: "above", x: 6, ...elsewhere(line) } as const]),
      { conductor: "neutral", side: "above", x: 16, ...elsewhere("neutral") },
      { conductor: "protective", side: "above", x: 26 },
      ...(below ? [{ conductor: "switched", side: "below", x: 6 } as const] : []),
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...luminaire([left + 6, top + 15]),
      below ? lead(left + 6, top + 18, top + columnHeight) : lead(left + 6, top, top + 12),
      ...captions(
        [left, top],
        load.designation,
        [
          `${load.count} × ${load.name}`,
          load.room,
          ...(unswitched ? ["escape lighting, unswitched"] : []),
          `${power}, ${drivers}`,
        ],
        12,
      ),
      words([left + 16, top + 4.6], "N", { anchor: "middle" }),
      words([left + 26, top + 4.6], "PE", { anchor: "middle" }),
      words([left + 7.6, below ? top + columnHeight - 2.2 : top + 4.6], below ? "L′" : "L"),
      ...(below ? [] : [terminal([left + 6, top])]),
      terminal([left + 16, top]),
      terminal([left + 26, top]),
      ...(below ? [terminal([left + 6, top + columnHeight])] : []),
    ],
  };
}

const lead = (x: Millimetres, from: Millimetres, to: Millimetres): Mark => line([x, from], [x, to], device);
