import { type Contactor, figured, joined, say, type Words } from "#engine";
import { fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres } from "../drawing/mark.ts";
import type { SymbolKey, Written } from "./column.ts";
import type { ConductorKind } from "./conductors.ts";
import type { GroupPlan } from "./plan.ts";
import {
  box,
  breaker,
  fuse,
  gap,
  poleLink,
  residual,
  terminal,
  thin,
  unknownDevice,
  words,
} from "./symbols.ts";

export interface Rail {
  readonly conductor: ConductorKind;
  readonly y: Millimetres;
}

/** Every rail of a supply, from the uppermost. */
export const allRails = ({ lines, neutral, protective }: Rails): readonly Rail[] => [
  ...lines,
  neutral,
  ...(protective ? [protective] : []),
];

/** Lowest rail. */
export const lowestRail = (rails: Rails): Millimetres => (rails.protective ?? rails.neutral).y;

/** Places of the rails from the board, counted from the top of the drawing. */
export interface Rails {
  /** Of each line conductor of the circuit, one below the other. */
  readonly lines: readonly Rail[];
  /** The neutral; the other pole of a low-voltage supply. */
  readonly neutral: Rail;
  /** A low-voltage supply has none. */
  readonly protective: Rail | undefined;
}

export const boardWidth: Millimetres = 68;
const residualAt = 14;
const breakerAt = 46;

/** Board with the devices of the group's circuit: marks, symbols shown, and the stretches of the rails inside it, which devices interrupt. */
export function feedMarks(
  group: GroupPlan,
  written: Written,
  at: { readonly left: Millimetres; readonly top: Millimetres; readonly rails: Rails },
): {
  /** What is inside is drawn upon it. */
  readonly frame: Mark;
  readonly marks: readonly Mark[];
  readonly shows: readonly SymbolKey[];
  readonly stretches: readonly {
    readonly conductor: ConductorKind;
    readonly y: Millimetres;
    readonly from: Millimetres;
    readonly to: Millimetres;
  }[];
} {
  const { left, top, rails } = at;
  const { names, speak } = written;
  if (group.pack) return packMarks(group.pack, written, at);
  const { feed } = group;
  const device = feed?.device;
  const right = left + boardWidth;
  const [{ y: uppermost }] = rails.lines as readonly [Rail];
  const lowest = rails.lines.at(-1)?.y ?? uppermost;
  const apart = rails.neutral.y - lowest;
  const kind: SymbolKey =
    device === undefined || device.type === "unknown"
      ? "unknown-device"
      : device.type === "fuse-gG"
        ? "fuse"
        : "breaker";
  const rcd =
    device === undefined || device.rcd === undefined ? "unknown" : device.rcd === "none" ? "none" : "there";
  const neutralBroken = device?.poles === "one-and-neutral" || device?.poles === "three-and-neutral";
  const linked = device?.poles === "three" || device?.poles === "three-and-neutral";
  const symbolAt = (y: Millimetres): readonly Mark[] =>
    kind === "breaker"
      ? breaker([left + breakerAt, y])
      : kind === "fuse"
        ? fuse([left + breakerAt, y])
        : unknownDevice([left + breakerAt, y], 5);
  const gaps = (own: "line" | "neutral"): readonly (readonly [Millimetres, Millimetres])[] => [
    ...(rcd === "none" ? [] : [[residualAt, residualAt + gap] as const]),
    ...(own === "line" || neutralBroken ? [[breakerAt, breakerAt + gap] as const] : []),
  ];
  const cut = (conductor: ConductorKind, y: Millimetres, holes: ReturnType<typeof gaps>) => {
    const ends = [4, ...holes.flat(), boardWidth];
    return Array.from({ length: ends.length / 2 }, (_, i) => ({
      conductor,
      y,
      from: left + ends[2 * i]!,
      to: left + ends[2 * i + 1]!,
    }));
  };
  const texts = [
    device
      ? joined([names.of(device.id), deviceWords(device.type, device.rating)], "  ")
      : say`protective device unknown`,
    rcd === "there" && typeof device?.rcd === "object"
      ? joined(
          [
            names.rcdOf(device.id) ?? "",
            rcdWords(Math.round(device.rcd.residual * 1000), feed?.found?.rcdName),
          ],
          "  ",
        )
      : rcd === "none"
        ? say`no RCD on record`
        : say`RCD unknown`,
    feed ? say`circuit ${feed.circuit.name}` : say`circuit unknown`,
  ].map(speak);
  return {
    shows: [
      "location",
      kind,
      ...(rcd === "there" ? (["residual"] as const) : rcd === "unknown" ? (["unknown-device"] as const) : []),
    ],
    stretches: [
      ...rails.lines.flatMap(({ conductor, y }) => cut(conductor, y, gaps("line"))),
      ...cut("neutral", rails.neutral.y, gaps("neutral")),
      ...(rails.protective ? cut("protective", rails.protective.y, []) : []),
    ],
    frame: box([left, top], boardWidth, lowestRail(rails) - top + 19, { ...thin, dash: [3, 1.5] }),
    marks: [
      words(
        [left + 2.5, top + 4.6],
        fitted(
          speak(feed?.board ? joined([feed.board.designation, feed.board.name], "  ") : say`board unknown`),
          right - left - 5,
          { size: 2.5, weight: "semibold" },
        ),
        { weight: "semibold" },
      ),
      ...(rcd === "there"
        ? residual([left + residualAt, uppermost], apart, rails.lines.length + 1)
        : rcd === "unknown"
          ? [...rails.lines.map(({ y }) => y), rails.neutral.y].flatMap((y) =>
              unknownDevice([left + residualAt, y], 5),
            )
          : []),
      ...rails.lines.flatMap(({ y }) => symbolAt(y)),
      ...(neutralBroken ? symbolAt(rails.neutral.y) : []),
      // Poles that nobody entered are not drawn as if they switched together.
      ...(rails.lines.length > 1 && linked && kind === "breaker"
        ? [poleLink([left + breakerAt, uppermost], neutralBroken ? rails.neutral.y : lowest)]
        : []),
      ...texts.map((text, i) =>
        words([left + 2.5, lowestRail(rails) + 6.5 + i * 4.4], fitted(text, right - left - 5, { size: 2.5 })),
      ),
    ],
  };
}

/** A relay pack as the supply of low-voltage detectors. */
function packMarks(
  pack: Contactor,
  { names, speak }: Written,
  { left, top, rails }: { readonly left: Millimetres; readonly top: Millimetres; readonly rails: Rails },
): ReturnType<typeof feedMarks> {
  const supplies = pack.pack?.supplies;
  const texts = [
    say`relay pack, low voltage`,
    supplies === undefined
      ? say`what it gives: see data sheet`
      : say`gives ${`${Math.round(supplies * 1000)} mA`}`,
    say`mains side: its other sheet`,
  ].map(speak);
  return {
    shows: ["location"],
    frame: box([left, top], boardWidth, lowestRail(rails) - top + 19, { ...thin, dash: [3, 1.5] }),
    stretches: allRails(rails).map(({ conductor, y }) => ({
      conductor,
      y,
      from: left + boardWidth / 2,
      to: left + boardWidth,
    })),
    marks: [
      words(
        [left + 2.5, top + 4.6],
        fitted(speak(joined([names.of(pack.id), pack.name], "  ")), boardWidth - 5, {
          size: 2.5,
          weight: "semibold",
        }),
        { weight: "semibold" },
      ),
      ...allRails(rails).map(({ y }) => terminal([left + boardWidth / 2, y])),
      ...texts.map((text, i) =>
        words([left + 2.5, lowestRail(rails) + 6.5 + i * 4.4], fitted(text, boardWidth - 5, { size: 2.5 })),
      ),
    ],
  };
}

const rcdWords = (milliamperes: number, name: string | undefined): Words =>
  name ? say`RCD ${milliamperes} mA (${name})` : say`RCD ${milliamperes} mA`;

/** "B 10 A"; what is not known says so. */
export function deviceWords(type: string, rating: number | undefined): Words {
  if (rating === undefined)
    return type === "unknown"
      ? say`type and rating unknown`
      : type === "fuse-gG"
        ? say`fuse gG rating unknown`
        : say`${type} rating unknown`;
  const amperes = figured(`${rating} A`);
  return type === "unknown"
    ? say`type unknown ${amperes}`
    : type === "fuse-gG"
      ? say`fuse gG ${amperes}`
      : joined([type, amperes], " ");
}
