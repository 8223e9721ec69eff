import { type Detector, type DetectorModel, degreesOf, type LensMask, type Site, wholeTurn } from "#engine";
import { broken } from "../drawing/lettering.ts";
import type { Measure } from "./measures.ts";
import type { Column } from "./table.ts";

/** What the table of a setting-out sheet says of each detector. */
export const deviceColumns: readonly Column[] = [
  { head: "Tag", width: 17, align: "start" },
  { head: "Model", width: 53, align: "start" },
  { head: "From wall", width: 33, align: "start" },
  { head: "From wall", width: 33, align: "start" },
  { head: "Cut-out", width: 21, align: "end" },
  { head: "Height", width: 16, align: "end" },
  { head: "Turn", width: 12, align: "end" },
  { head: "Masks", width: 25, align: "start" },
];

/** The rows of one detector: what is too long for its column goes on in rows without a tag; a figure is never cut short. */
export function deviceRows(
  detector: Detector,
  placed: {
    readonly site: Site;
    readonly measures: readonly Measure[];
    readonly letters: ReadonlyMap<number, string>;
  },
): readonly (readonly string[])[] {
  const model = placed.site.models.find((one) => one.id === detector.model);
  const measures = [0, 1].map((i) => {
    const measure = placed.measures[i];
    return measure ? measureWords(measure, placed.letters) : "measure on site";
  });
  const cells = [
    [detector.tag],
    [model?.title ?? detector.model],
    ...measures.map((words) => [words]),
    [cutOutWords(model)],
    [millimetres(detector.height)],
    [turnWords(detector.turn)],
    detector.masks.length === 0 ? ["none"] : detector.masks.map(maskWords),
  ].map((parts, i) => parts.flatMap((part) => broken(part, deviceColumns[i]!.width - 3, 2.5)));
  const rows = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: rows }, (_, row) => cells.map((lines) => lines[row] ?? ""));
}

/** Whole millimetres with a thin gap in the thousands, as drawings have it. */
export const millimetres = (metres: number): string =>
  String(Math.round(metres * 1000)).replace(/\B(?=(\d{3})+(?!\d))/g, "\u00a0");

export function measureWords(measure: Measure, letters: ReadonlyMap<number, string>): string {
  const letter = letters.get(measure.wall) ?? "?";
  switch (measure.kind) {
    case "wall":
      return `${letter}  ${millimetres(measure.distance)}`;
    case "corner":
      return `corner ${letter}  ${millimetres(measure.distance)}`;
    case "tiles":
      return `${letter}  tile ${measure.tiles} (${millimetres(measure.distance)})`;
  }
}

export const cutOutWords = (model: DetectorModel | undefined): string =>
  model?.cutOut === undefined ? "unknown*" : `Ø ${Math.round(model.cutOut * 1000)}`;

export const turnWords = (turn: number): string => `${Math.round(degreesOf(wholeTurn(turn))) % 360}°`;

/** Sector from the notch, counter-clockwise seen from above, × off-nadir band. */
export const maskWords = (mask: LensMask): string =>
  `${whole(mask.from)}–${whole(mask.to)}° × ${whole(mask.inner)}–${whole(mask.outer)}°`;

const whole = (angle: number): number => Math.round(degreesOf(angle));
