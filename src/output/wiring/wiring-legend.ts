import { joined, type Said, say } from "#engine";
import { detectorMarks } from "../drawing/detector-mark.ts";
import type { Variant } from "../drawing/ink.ts";
import { columnWidths, leftsOf } from "../drawing/legend-columns.ts";
import { fitted } from "../drawing/lettering.ts";
import type { Box, Mark, PaperPoint } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";
import type { SymbolKey } from "./column.ts";
import {
  type ConductorKind,
  colourWords,
  conductorOrder,
  conductorPens,
  markings,
  type WiringRegion,
} from "./conductors.ts";
import {
  box,
  breaker,
  fuse,
  gap,
  joint,
  latchingSwitch,
  line,
  luminaire,
  mainContact,
  makeContact,
  pushButton,
  terminal,
  thin,
  unknownDevice,
  words,
} from "./symbols.ts";

const meanings: Readonly<Record<SymbolKey, Said>> = {
  detector: say`B: detector (doubled: hears)`,
  contact: say`its contact, here open`,
  luminaire: say`E: luminaires`,
  "push-button": say`S: push-button`,
  "latching-switch": say`S: switch`,
  coil: say`Q: coil of a contactor`,
  "main-contact": say`Q: main contact`,
  breaker: say`F: circuit breaker`,
  fuse: say`F: fuse`,
  residual: say`F: residual current device`,
  "unknown-device": say`unknown, look before work`,
  terminal: say`terminal`,
  joint: say`joined (else only crossing)`,
  location: say`+A: board, what is in it`,
  warning: say`as planned, not as allowed`,
};
const order = Object.keys(meanings) as readonly SymbolKey[];

const rowHeight = 5.65;
const keyWidth = 13;

/** Explains the symbols and conductors that are on the sheet, and nothing else. */
export function wiringLegend(
  shown: { readonly symbols: ReadonlySet<SymbolKey>; readonly conductors: ReadonlySet<ConductorKind> },
  drawn: {
    readonly box: Box;
    readonly region: WiringRegion;
    readonly variant: Variant;
    readonly speak: Speak;
  },
): readonly Mark[] {
  const rows = Math.max(1, Math.floor((drawn.box.bottom - drawn.box.top) / rowHeight));
  const entries = [
    ...conductorOrder
      .filter((kind) => shown.conductors.has(kind))
      .map((kind) => ({
        text: drawn.speak(
          kind === "unknown" ? say`unknown` : joined([markings[kind], colourWords(kind, drawn.region)], ": "),
        ),
        marks: ([x, y]: PaperPoint) =>
          conductorPens(kind, drawn).map((pen) => line([x, y], [x + keyWidth - 3, y], pen)),
      })),
    ...order
      .filter((key) => shown.symbols.has(key))
      .map((key) => ({ text: drawn.speak(meanings[key]), marks: (at: PaperPoint) => swatch(key, at) })),
  ];
  const widths = columnWidths(
    entries.map(({ text }) => text),
    rows,
    { room: drawn.box.right - drawn.box.left, beside: keyWidth + 1.5 },
  );
  const lefts = leftsOf(widths, drawn.box.left);
  return entries.flatMap(({ text, marks }, i) => {
    const column = Math.floor(i / rows);
    const left = lefts[column]!;
    const middle = drawn.box.top + (i % rows) * rowHeight + rowHeight / 2;
    return [
      ...marks([left, middle]),
      words([left + keyWidth, middle + 1.1], fitted(text, widths[column]! - keyWidth - 1.5, { size: 2.5 })),
    ];
  });
}

/** A symbol on its own, in a field of 10 × 5 mm whose left edge has its middle at a place. */
function swatch(key: SymbolKey, [x, y]: PaperPoint): readonly Mark[] {
  const level = (symbol: readonly Mark[]): readonly Mark[] => [
    line([x, y], [x + 1.5, y]),
    ...symbol,
    line([x + 1.5 + gap, y], [x + 10, y]),
  ];
  switch (key) {
    case "detector":
      return detectorMarks([x + 5, y], { turn: 0, hears: false });
    case "contact":
      return level(makeContact([x + 1.5, y]));
    case "breaker":
      return level(breaker([x + 1.5, y]));
    case "fuse":
      return level(fuse([x + 1.5, y]));
    case "luminaire":
      return luminaire([x + 5, y], 2.2);
    case "push-button":
      return pushButton(x + 8, y - 2.8, y + 2.8);
    case "latching-switch":
      return latchingSwitch(x + 8.5, y - 2.8, y + 2.8);
    case "coil":
      return [
        box([x + 1, y - 1.8], 7, 3.6),
        line([x + 4.5, y - 2.7], [x + 4.5, y - 1.8]),
        line([x + 4.5, y + 1.8], [x + 4.5, y + 2.7]),
      ];
    case "main-contact":
      return mainContact(x + 5, y - 2.8, y + 2.8);
    case "residual":
      return [
        line([x, y], [x + 1, y]),
        ...makeContact([x + 1, y]),
        { kind: "circle", at: [x + 9.3, y], radius: 1.2, pen: thin },
      ];
    case "unknown-device":
      return unknownDevice([x + 1.5, y], 4.6);
    case "terminal":
      return [terminal([x + 5, y])];
    case "joint":
      return [line([x, y], [x + 10, y]), line([x + 5, y], [x + 5, y + 2.4]), joint([x + 5, y])];
    case "location":
      return [box([x + 0.5, y - 2.2], 9, 4.4, { ...thin, dash: [2, 1] })];
    case "warning":
      return [words([x + 5, y + 1.2], "!", { anchor: "middle", weight: "semibold" })];
  }
}
