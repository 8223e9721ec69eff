import { type Contactor, joined, say } from "#engine";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import {
  type Column,
  captions,
  columnHeight,
  columnWidth,
  foreignWords,
  type Tap,
  type Written,
} from "./column.ts";
import { type ConductorKind, markings, type SwitchedKind } from "./conductors.ts";
import type { GroupPlan, LoadGroup } from "./plan.ts";
import { box, coil, device, line, luminaire, mainContact, terminal, words } from "./symbols.ts";

/** Left edge to the first main contact, and from one to the next. */
const mainAt: Millimetres = 8;
const mainPitch: Millimetres = 8;

/** Lines of a group's circuit that main contacts break together: one, or all three. */
export const brokenBy = (
  group: GroupPlan,
): readonly { readonly line: ConductorKind; readonly switched: SwitchedKind }[] =>
  group.feed === undefined
    ? [{ line: "unknown", switched: "switched" }]
    : group.feed.lines.length === 1
      ? [{ line: group.feed.line, switched: "switched" }]
      : group.feed.lines.map((own) => ({ line: own, switched: `switched-${own}` as const }));

/** The conductor behind the contact on which luminaires hang; unknown where a contactor breaks three lines and nobody entered theirs. */
export const switchedFor = (group: GroupPlan, load: Pick<LoadGroup, "line">): SwitchedKind | "unknown" =>
  group.mains.length === 0 || group.feed === undefined || group.feed.lines.length === 1
    ? "switched"
    : load.line === undefined
      ? "unknown"
      : `switched-${load.line}`;

/** Main contacts of a contactor: one, or three that close together. */
export function mainColumn(one: Contactor, group: GroupPlan, { names, speak }: Written): Column {
  const poles = brokenBy(group).map((pole, i) => ({ ...pole, x: mainAt + i * mainPitch }));
  const last = poles.at(-1)?.x ?? mainAt;
  return {
    shows: ["main-contact", "terminal"],
    taps: poles.flatMap(({ line: above, switched, x }): readonly Tap[] => [
      { conductor: above, side: "above", x },
      { conductor: switched, side: "below", x },
    ]),
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...poles.flatMap(({ x }, i) => [
        ...mainContact(left + x, top, top + columnHeight),
        words([left + x + 1.4, top + 4.6], String(2 * i + 1)),
        words([left + x + 1.4, top + columnHeight - 2.2], String(2 * i + 2)),
        terminal([left + x, top]),
        terminal([left + x, top + columnHeight]),
      ]),
      ...(poles.length > 1
        ? [
            line([left + mainAt - 1.6, top + columnHeight / 2], [left + last - 1.6, top + columnHeight / 2], {
              width: 0.25,
              colour: device.colour,
              dash: [1, 0.8],
            }),
          ]
        : []),
      ...captions(
        [left, top],
        speak(names.of(one.id)),
        [poles.length > 1 ? say`main contacts` : say`main contact`, one.name].map(speak),
        last + 6,
      ),
    ],
  };
}

/** Coil of a contactor, between the switched line and the neutral of the group; the relay of a pack between signal and supply. */
export function coilColumn(one: Contactor, { names, speak }: Written): Column {
  const x = 10;
  const [upper, lower] = one.pack ? (["−", say`signal`] as const) : (["A2", "A1"] as const);
  return {
    shows: ["coil", "terminal"],
    taps: [
      { conductor: one.pack ? "low-minus" : "neutral", side: "above", x },
      { conductor: one.pack ? "low-signal" : "switched", side: "below", x },
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...coil(left + x, top, top + columnHeight),
      ...captions(
        [left, top],
        speak(names.of(one.id)),
        [one.pack ? say`relay of the pack` : say`coil`, one.name].map(speak),
        16,
      ),
      words([left + x + 2, top + 4.6], upper),
      words([left + x + 2, top + columnHeight - 2.2], speak(lower)),
      terminal([left + x, top]),
      terminal([left + x, top + columnHeight]),
    ],
  };
}

/** Luminaires on a switched line, or escape luminaires before the contact. */
export function loadColumn(load: LoadGroup, group: GroupPlan, { names, speak }: Written): Column {
  const unswitched = load.emergency !== undefined;
  const own = group.feed && group.feed.lines.length > 1 ? load.line : group.feed?.line;
  const line: ConductorKind = load.emergency === "unknown" ? "unknown" : (own ?? "unknown");
  const switched = switchedFor(group, load);
  const below = !unswitched || load.emergency === "after-contact";
  const paired = group.control === "pair" && !unswitched;
  const elsewhere = (conductor: ConductorKind): Pick<Tap, "foreign"> =>
    load.foreign === undefined ? {} : { foreign: foreignWords(conductor, load.foreign, names) };
  const power =
    load.power === undefined ? say`power unknown` : say`${Number(load.power.toPrecision(3))} W each`;
  const drivers =
    load.drivers === undefined
      ? say`drivers unknown`
      : load.drivers === 1
        ? say`1 driver each`
        : say`${load.drivers} drivers each`;
  return {
    shows: ["luminaire", "terminal", ...(load.foreign === undefined ? [] : (["warning"] as const))],
    taps: [
      ...(below ? [] : [{ conductor: line, side: "above", x: 6, ...elsewhere(line) } as const]),
      { conductor: "neutral", side: "above", x: 16, ...elsewhere("neutral") },
      { conductor: "protective", side: "above", x: 26 },
      ...(below ? [{ conductor: switched, side: "below", x: 6 } as const] : []),
      ...(paired ? controlAt.map(({ conductor, x }) => ({ conductor, side: "below", x }) as const) : []),
    ],
    marks: ([left, top]) => [
      box([left, top], columnWidth, columnHeight),
      ...luminaire([left + 6, top + 15]),
      below ? lead(left + 6, top + 18, top + columnHeight) : lead(left + 6, top, top + 12),
      ...captions(
        [left, top],
        speak(load.designation),
        [
          joined([load.count, load.name], " × "),
          load.room,
          ...(unswitched ? [say`escape lighting, unswitched`] : []),
          joined([power, drivers], ", "),
        ].map(speak),
        12,
      ),
      words([left + 16, top + 4.6], "N", { anchor: "middle" }),
      words([left + 26, top + 4.6], "PE", { anchor: "middle" }),
      words(
        [left + 7.6, below ? top + columnHeight - 2.2 : top + 4.6],
        speak(below ? (switched === "unknown" ? "L′" : markings[switched]) : "L"),
      ),
      ...(below ? [] : [terminal([left + 6, top])]),
      terminal([left + 16, top]),
      terminal([left + 26, top]),
      ...(below ? [terminal([left + 6, top + columnHeight])] : []),
      ...(paired
        ? controlAt.flatMap(({ x, word }) => [
            words([left + x, top + columnHeight - 2.2], word, { anchor: "middle" }),
            terminal([left + x, top + columnHeight]),
          ])
        : []),
    ],
  };
}

/** Where the control pair enters a luminaire. */
const controlAt = [
  { conductor: "control-plus", x: 31, word: "+" },
  { conductor: "control-minus", x: 40, word: "−" },
] as const;

const lead = (x: Millimetres, from: Millimetres, to: Millimetres): Mark => line([x, from], [x, to], device);
