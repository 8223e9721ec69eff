import {
  type Detector,
  type DetectorModel,
  degreesOf,
  first,
  joined,
  type LensMask,
  type Site,
  say,
  type Words,
  wholeTurn,
} from "#engine";
import { broken } from "../drawing/lettering.ts";
import type { Speak } from "../words/speak.ts";
import { fittedColumns } from "./fitted-columns.ts";
import type { Measure } from "./measures.ts";
import type { Column } from "./table.ts";

/** A hole of which the data sheet says nothing. */
const unknownHole = joined([say`unknown`, "*"], "");

const columns: readonly Column[] = [
  { head: say`Tag`, width: 17, align: "start" },
  { head: say`Model`, width: 53, align: "start" },
  { head: say`From wall`, width: 33, align: "start" },
  { head: say`From wall`, width: 33, align: "start" },
  { head: first(say`cut-out`), width: 21, align: "end" },
  { head: say`Height`, width: 16, align: "end" },
  { head: say`Turn`, width: 12, align: "end" },
  { head: say`Masks`, width: 25, align: "start" },
];

/** What the table of a setting-out sheet says of each detector, in columns as the language of the paper needs them. */
export const deviceColumns = (speak: Speak): readonly Column[] =>
  fittedColumns(columns, [["", "", "", "", unknownHole]], speak);

/** The rows of one detector: what is too long for its column goes on in rows without a tag; a figure is never cut short. */
export function deviceRows(
  detector: Detector,
  placed: {
    readonly site: Site;
    readonly measures: readonly Measure[];
    readonly letters: ReadonlyMap<number, string>;
    readonly speak: Speak;
  },
): readonly (readonly string[])[] {
  const { speak } = placed;
  const model = placed.site.models.find((one) => one.id === detector.model);
  const measures = [0, 1].map((i) => {
    const measure = placed.measures[i];
    return measure ? measureWords(measure, placed.letters) : say`measure on site`;
  });
  const widths = deviceColumns(speak).map(({ width }) => width);
  const cells: readonly (readonly string[])[] = (
    [
      [detector.tag],
      [model?.title ?? detector.model],
      ...measures.map((words) => [words]),
      [model?.cutOut === undefined ? unknownHole : cutOutWords(model)],
      [millimetres(detector.height)],
      [turnWords(detector.turn)],
      detector.masks.length === 0 ? [say`none`] : detector.masks.map(maskWords),
    ] satisfies readonly (readonly Words[])[]
  ).map((parts, i) => parts.flatMap((part) => broken(speak(part), widths[i]! - 3, 2.5)));
  const rows = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: rows }, (_, row) => cells.map((lines) => lines[row] ?? ""));
}

/** Whole millimetres with a thin gap in the thousands, as drawings have it. */
export const millimetres = (metres: number): string =>
  String(Math.round(metres * 1000)).replace(/\B(?=(\d{3})+(?!\d))/g, "\u00a0");

/** @param written - How a length stands there; as on drawings if absent. */
export function measureWords(
  measure: Measure,
  letters: ReadonlyMap<number, string>,
  written: (metres: number) => string = millimetres,
): Words {
  const letter = letters.get(measure.wall) ?? "?";
  const distance = written(measure.distance);
  switch (measure.kind) {
    case "wall":
      return `${letter}  ${distance}`;
    case "corner":
      return say`corner ${letter}  ${distance}`;
    case "tiles":
      return say`${letter}  tile ${measure.tiles} (${distance})`;
  }
}

export const cutOutWords = (model: DetectorModel | undefined): Words =>
  model?.cutOut === undefined ? say`unknown` : `Ø ${Math.round(model.cutOut * 1000)}`;

export const turnWords = (turn: number): string => `${Math.round(degreesOf(wholeTurn(turn))) % 360}°`;

/** Sector from the notch, counter-clockwise seen from above, × off-nadir band. */
export const maskWords = (mask: LensMask): string =>
  `${whole(mask.from)}–${whole(mask.to)}° × ${whole(mask.inner)}–${whole(mask.outer)}°`;

const whole = (angle: number): number => Math.round(degreesOf(angle));
