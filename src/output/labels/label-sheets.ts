import { joined, type PlannedDevice, roomTitle, type Site, say, type Words } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken, fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint, PaperRing } from "../drawing/mark.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingWords } from "../setting-sheets/setting-words.ts";
import { words } from "../wiring/symbols.ts";
import type { Speak } from "../words/speak.ts";
import { type LabelGrid, type LabelGridName, labelGrids } from "./label-grids.ts";
import { labelText } from "./label-text.ts";
import { type QrModules, qrOf } from "./qr.ts";

export interface LabelSheetsInput {
  readonly site: Site;
  readonly devices: readonly PlannedDevice[];
  /** Name of the job, and the identity that its copies carry. */
  readonly job: string;
  readonly identity: string;
  readonly grid?: LabelGridName;
  /** What the labels speak. */
  readonly speak: Speak;
}

/** Clear rim of a label: printers are off by a millimetre. */
const rim: Millimetres = 2.5;
/** Light modules about the code within its square; with the rim, and the gap to the words, that makes the four that it needs. */
const lightModules = 2;
const lineHeight: Millimetres = 4.1;
/** Most of a label's width that the code may take; at 63.5 mm its modules are then half a millimetre. */
const codeShare = 0.38;

/** A label for each detector on upright A4: tag, room, circuit, what is set, and a code that the program's scanner resolves. */
export function labelSheets(input: LabelSheetsInput): readonly UnnumberedSheet[] {
  const grid = labelGrids[input.grid ?? "3x7"];
  const per = grid.columns * grid.rows;
  const labels = input.site.detectors.map(
    (detector) => (at: PaperPoint) => labelMarks(input, detector.id, at, grid),
  );
  return Array.from(
    { length: Math.ceil(labels.length / per) },
    (_, page): UnnumberedSheet =>
      () => ({
        name: `labels-${page + 1}`,
        title: `${input.job}: ${input.speak(say`Labels`)}`,
        width: 210,
        height: 297,
        marks: labels
          .slice(page * per, (page + 1) * per)
          .flatMap((label, i) =>
            label([
              grid.left + (i % grid.columns) * grid.acrossPitch,
              grid.top + Math.floor(i / grid.columns) * grid.downPitch,
            ]),
          ),
      }),
  );
}

function labelMarks(
  { site, devices, job, identity, speak }: LabelSheetsInput,
  id: string,
  [left, top]: PaperPoint,
  grid: LabelGrid,
): readonly Mark[] {
  const detector = site.detectors.find((one) => one.id === id)!;
  const room = site.rooms.find((one) => one.id === detector.room);
  const planned = devices.find(({ context }) => context.device === id);
  const code = qrOf(labelText({ job: identity, device: id, room: detector.room, tag: detector.tag }));
  const side = code ? Math.min(grid.height - 2 * rim, grid.width * codeShare) : 0;
  const text = left + rim + side + (code ? 2 : 0);
  const width = left + grid.width - rim - text;
  const lines = [
    ...broken(roomTitle(room), width, 2.5).slice(0, 2),
    ...(detector.circuit ? [detector.circuit] : []),
    ...(planned ? settingLines(planned).map(speak) : []),
    job,
  ].slice(0, Math.floor((grid.height - 2 * rim - 6.5) / lineHeight));
  return [
    ...(code ? codeMarks(code, [left + rim, top + (grid.height - side) / 2], side) : []),
    words([text, top + rim + 4.4], fitted(detector.tag, width, { size: 3.5, weight: "semibold" }), {
      size: 3.5,
      weight: "semibold",
    }),
    ...lines.map((line, i) =>
      words([text, top + rim + 6.5 + (i + 0.75) * lineHeight], fitted(line, width, { size: 2.5 }), {
        colour: line === job ? muted : ink,
      }),
    ),
  ];
}

/** What one wants to know on the ladder: how it switches, how long it holds, from which light on. */
const settingLines = ({ settings }: PlannedDevice): readonly Words[] => [
  settingWords("mode", settings.mode.value),
  settings.threshold.value === "off"
    ? say`off after ${settingWords("offDelay", settings.offDelay.value)}`
    : joined(
        [
          settingWords("offDelay", settings.offDelay.value),
          settingWords("threshold", settings.threshold.value),
        ],
        ", ",
      ),
];

/** The dark modules as one area: runs of a row are joined, so that no hairline shows between them. */
function codeMarks(code: QrModules, [left, top]: PaperPoint, side: Millimetres): readonly Mark[] {
  const module = side / (code.length + 2 * lightModules);
  const inset = lightModules * module;
  const rings: PaperRing[] = [];
  code.forEach((row, r) => {
    for (let from = 0; from < row.length; from++) {
      if (!row[from] || row[from - 1]) continue;
      let to = from;
      while (row[to]) to++;
      const [x, y] = [left + inset + from * module, top + inset + r * module];
      const end = x + (to - from) * module;
      rings.push([
        [x, y],
        [end, y],
        [end, y + module],
        [x, y + module],
      ]);
    }
  });
  return [{ kind: "area", rings, fills: [{ kind: "solid", colour: "#000000" }] }];
}
