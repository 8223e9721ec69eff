import { inside, joined, type Said, say, type Words } from "#engine";
import { detectorMarks } from "../drawing/detector-mark.ts";
import { broken, fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import { type Column, captions, columnHeight, columnWidth, foreignWords, type Written } from "./column.ts";
import { coilColumn, loadColumn, mainColumn } from "./load-columns.ts";
import type { GroupPlan, PlannedButton, PlannedDetector, Terminal } from "./plan.ts";
import { box, latchingSwitch, pushButton, terminal, uprightContact, words } from "./symbols.ts";

const aboveAt: Readonly<Partial<Record<Terminal["kind"], Millimetres>>> = {
  "line-in": 6,
  neutral: 16,
  "protective-conductor": 26,
};
const belowAt: Readonly<Partial<Record<Terminal["kind"], Millimetres>>> = {
  "switched-line": 6,
  "push-button": 17,
  "extension-in": 25,
  "extension-out": 31,
  "control-plus": 37,
  "control-minus": 42.5,
};
const shortLabels: Readonly<Partial<Record<Terminal["kind"], Words>>> = {
  "extension-in": say`in`,
  "extension-out": say`out`,
  "control-plus": "+",
  "control-minus": "−",
};

/** All apparatus of a group from left to right. */
export function columnsOf(group: GroupPlan, written: Written): readonly Column[] {
  const rails = buttonRails(group);
  return [
    ...group.detectors.map((one) => detectorColumn(one, rails.get(one.wired.id) ?? 0, written)),
    ...group.buttons.map((one) => buttonColumn(one, rails.get(one.button.detectors[0] ?? "") ?? 0, written)),
    ...(group.line.override === "yes" ? [besideColumn(written)] : []),
    ...group.mains.map((one) => mainColumn(one, group, written)),
    ...group.coils.map((one) => coilColumn(one, written)),
    ...group.loads.map((load) => loadColumn(load, group, written)),
    ...group.emergency.map((load) => loadColumn(load, group, written)),
  ];
}

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

const roles = { master: say`master`, slave: say`slave`, parallel: say`parallel` } as const;

function detectorColumn(planned: PlannedDetector, rail: number, { names, speak }: Written): Column {
  const { wired, terminals, room } = planned;
  const placed = terminals.flatMap((one) => {
    const above = aboveAt[one.kind];
    const x = above ?? belowAt[one.kind];
    return x === undefined ? [] : [{ one, x, side: above === undefined ? "below" : "above" } as const];
  });
  const potentialFree = wired.contact?.kind === "potential-free";
  const said = [
    wired.role === "alone" ? undefined : roles[wired.role],
    terminals.some(({ declared }) => declared === "unknown") ? say`terminals: data sheet` : undefined,
    potentialFree ? say`potential-free contact` : undefined,
  ].flatMap((text) => (text === undefined ? [] : [speak(text)]));
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
      ...noteLines(room, said).map((text, i, { length }) =>
        words([left + 9, top + 20.5 + i * (length > 3 ? 3.3 : 3.9)], text),
      ),
      ...placed.flatMap(({ one, x, side }): readonly Mark[] => {
        const y = side === "above" ? top : top + columnHeight;
        const name = speak(shortLabels[one.kind] ?? one.label);
        const label = one.declared === "no" ? `! ${name}` : name;
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

/** From the contact to the edge of the box. [mm] */
const noteWidth = columnWidth - 10;
/** Lines between the mark and the terminals below. */
const usualLines = 3;

/** What is noted of a detector stands whole; its room takes the lines that are left, one at least, and ends in an ellipsis where they are too few. */
function noteLines(room: string, said: readonly string[]): readonly string[] {
  const notes = said.flatMap((text) => broken(text, noteWidth, 2.5));
  const named = broken(room, noteWidth, 2.5);
  const free = Math.max(1, usualLines - notes.length);
  const shown = named.length <= free ? named : [...named.slice(0, free - 1), named.slice(free - 1).join(" ")];
  return [...shown.map((text) => fitted(text, noteWidth, { size: 2.5 })), ...notes];
}

const lampNeutral: Readonly<Record<NonNullable<PlannedButton["button"]["glowLamp"]>["ownNeutral"], Said>> = {
  yes: say`own neutral`,
  no: say`no own neutral`,
  unknown: say`own neutral unknown`,
};

function buttonColumn(
  { button, designation, room, from, foreign }: PlannedButton,
  rail: number,
  { names, speak }: Written,
): Column {
  const latching = button.kind === "latching-switch";
  const lamp = button.glowLamp
    ? joined(
        [
          say`lamp ${Number((button.glowLamp.current * 1000).toPrecision(2))} mA`,
          lampNeutral[button.glowLamp.ownNeutral],
        ],
        ", ",
      )
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
        speak(designation),
        [
          latching ? say`! latching switch, not a push-button` : say`push-button`,
          room,
          ...(from === "unknown" ? [say`connects L or N: see data sheet`] : []),
          ...(lamp ? [lamp] : []),
        ].map(speak),
        14,
      ),
      terminal([left + 10, top]),
      terminal([left + 10, top + columnHeight]),
    ],
  };
}

/** A switch that stays beside the contacts. */
function besideColumn({ speak }: Written): Column {
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
        speak(inside(say`Switch`)),
        [speak(say`stays beside the contact: what it switches on, no detector switches off`)],
        14,
      ),
      terminal([left + 10, top]),
      terminal([left + 10, top + columnHeight]),
    ],
  };
}
