import { type Room, type Said, type Site, say } from "#engine";
import { drawingBox, frameBox, frameMarks, papers } from "../drawing/frame.ts";
import { ink } from "../drawing/ink.ts";
import type { Box, Mark, Millimetres, Sheet } from "../drawing/mark.ts";
import { centred, extentOf } from "../drawing/projection.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import { type AsbestosKnown, asbestosWords, bandHeight, bandMarks } from "./asbestos-band.ts";
import { deviceColumns, deviceRows } from "./device-rows.ts";
import { measuresOf } from "./measures.ts";
import { cellSize, drawingOf, type MeasuredDetector, roomView } from "./room-view.ts";
import { headHeight, rowHeight, tableMarks } from "./table.ts";
import { wallLetters } from "./wall-letters.ts";

export interface SettingOutInput {
  readonly site: Site;
  /** Id of the storey. */
  readonly storey: string;
  /** Everything but page and pages, which the caller counts over the whole pack. */
  readonly title: Omit<SheetTitle, "page" | "pages">;
  /** Until somebody has looked for asbestos, every sheet that one drills by warns of it. */
  readonly asbestos: AsbestosKnown;
}

/** A setting-out sheet that still needs its page number. */
export type UnnumberedSheet = (page: number, pages: number) => Sheet;

/** Where more rows than this would crowd the drawing out, the table gets sheets of its own. */
const mostRows = 14;
const footHeight: Millimetres = 14;
const roomScales = [50, 100, 200, 500, 1000] as const;

/**
 * Sheets from which the holes are drilled: every room with detectors at 1 : 50 if an A3 sheet holds it, as many rooms on a
 * sheet as fit, with a table of measures, cut-outs, heights, turns and masks.
 */
export function settingOutSheets(input: SettingOutInput): readonly UnnumberedSheet[] {
  const band = bandHeight(warningOf(input), frameBox("A3"));
  const views = input.site.rooms
    .filter((room) => room.storey === input.storey)
    .map((room) => viewOf(input, room, band))
    .filter((view) => view.devices.length > 0);
  const scales = [...new Set(views.map((view) => view.scale))].sort((a, b) => a - b);
  return scales
    .flatMap((scale) =>
      packed(
        views.filter((view) => view.scale === scale),
        band,
      ),
    )
    .flatMap((group, i) => sheetsOf(input, group, i + 1));
}

/** The warning of asbestos in the language of the paper. */
const warningOf = ({ asbestos, title }: SettingOutInput): string | undefined => {
  const words = asbestosWords(asbestos);
  return words === undefined ? undefined : title.speak(words);
};

interface View {
  readonly room: Room;
  readonly devices: readonly MeasuredDetector[];
  readonly letters: ReadonlyMap<number, string>;
  readonly rows: readonly (readonly string[])[];
  readonly scale: number;
  readonly size: readonly [Millimetres, Millimetres];
}

interface Placed {
  readonly view: View;
  readonly cell: Box;
}

interface Group {
  readonly placed: readonly Placed[];
  readonly rows: number;
}

function viewOf({ site, title: { speak } }: SettingOutInput, room: Room, band: Millimetres): View {
  const devices = site.detectors
    .filter((detector) => detector.room === room.id)
    .map((detector): MeasuredDetector => ({ detector, measures: measuresOf(detector, room, site) }));
  const letters = wallLetters(devices.flatMap((one) => one.measures));
  const rows = devices.flatMap((one) =>
    deviceRows(one.detector, { site, measures: one.measures, letters, speak }),
  );
  const window = windowFor(rows.length, band);
  const scale =
    roomScales.find((one) => {
      const [width, height] = cellSize(room, one);
      return width <= window.right - window.left && height <= window.bottom - window.top;
    }) ?? roomScales[roomScales.length - 1]!;
  return { room, devices, letters, rows, scale, size: cellSize(room, scale) };
}

/** The part of the sheet that is left for drawing above a table of some rows and below a band across the top. */
function windowFor(rows: number, band: Millimetres): Box {
  const box = drawingBox("A3", stripFor(rows));
  return { ...box, top: box.top + band };
}

const stripFor = (rows: number): Millimetres =>
  rows > mostRows
    ? titleBlockSize[1]
    : Math.max(titleBlockSize[1], headHeight + rows * rowHeight + footHeight);

/** Fills sheets in shelves from the upper left; what fits no more waits for a later sheet, smaller rooms go ahead. */
function packed(views: readonly View[], band: Millimetres): readonly Group[] {
  const groups: Group[] = [];
  let waiting = views;
  while (waiting.length > 0) {
    let taken: readonly View[] = [];
    for (const view of waiting) {
      const more = [...taken, view];
      if (taken.length === 0 || arranged(more, band)) taken = more;
    }
    groups.push(arranged(taken, band) ?? alone(taken, band));
    waiting = waiting.filter((view) => !taken.includes(view));
  }
  return groups;
}

function arranged(views: readonly View[], band: Millimetres): Group | undefined {
  const rows = views.reduce((sum, view) => sum + view.rows.length, 0);
  if (views.length > 1 && rows > mostRows) return undefined;
  const window = windowFor(rows, band);
  const placed: Placed[] = [];
  let [x, y, shelf] = [window.left, window.top, 0];
  for (const view of views) {
    const [width, height] = view.size;
    if (x + width > window.right + 1e-6) [x, y, shelf] = [window.left, y + shelf, 0];
    if (x + width > window.right + 1e-6 || y + height > window.bottom + 1e-6) return undefined;
    placed.push({ view, cell: { left: x, top: y, right: x + width, bottom: y + height } });
    x += width;
    shelf = Math.max(shelf, height);
  }
  return { placed, rows };
}

/** A room that no scale fits gets the whole window all the same. */
function alone(views: readonly View[], band: Millimetres): Group {
  const rows = views.reduce((sum, view) => sum + view.rows.length, 0);
  return { placed: views.map((view) => ({ view, cell: windowFor(rows, band) })), rows };
}

function sheetsOf(input: SettingOutInput, group: Group, number: number): readonly UnnumberedSheet[] {
  const rows = group.placed.flatMap(({ view }) => view.rows);
  const scale = group.placed[0]!.view.scale;
  const own = rows.length > mostRows;
  const name = `setting-out-${input.storey}-${number}`;
  const drawing: UnnumberedSheet = (page, pages) =>
    sheetOf(input, {
      name,
      page,
      pages,
      scale,
      strip: stripFor(rows.length),
      marks: group.placed.map(
        ({ view, cell }): Mark => ({ kind: "clip", within: cell, marks: cellMarks(input, view, cell) }),
      ),
      rows: own ? [] : rows,
      note: own ? say`The table of these detectors is on the next sheet.` : undefined,
    });
  if (!own) return [drawing];
  const frame = frameBox("A3");
  const top = frame.top + bandHeight(warningOf(input), frame);
  const perSheet = Math.floor((frame.bottom - titleBlockSize[1] - top - headHeight - 8) / rowHeight);
  const tables = Array.from({ length: Math.ceil(rows.length / perSheet) }, (_, i): UnnumberedSheet => {
    const part = rows.slice(i * perSheet, (i + 1) * perSheet);
    return (page, pages) =>
      sheetOf(input, {
        name: `${name}-table-${i + 1}`,
        page,
        pages,
        scale,
        strip: titleBlockSize[1],
        marks: tableMarks([frame.left + 4, top + 4], {
          columns: deviceColumns(input.title.speak),
          rows: part,
          speak: input.title.speak,
        }),
        rows: [],
        note: undefined,
      });
  });
  return [drawing, ...tables];
}

function cellMarks({ site, title: { speak } }: SettingOutInput, view: View, cell: Box): readonly Mark[] {
  const window = drawingOf(cell);
  const projection = centred(extentOf([view.room.outline])!, window, view.scale);
  return roomView({ site, ...view, projection, window: cell, speak });
}

function sheetOf(
  input: SettingOutInput,
  sheet: {
    readonly name: string;
    readonly page: number;
    readonly pages: number;
    readonly scale: number;
    readonly strip: Millimetres;
    readonly marks: readonly Mark[];
    readonly rows: readonly (readonly string[])[];
    readonly note: Said | undefined;
  },
): Sheet {
  const frame = frameBox("A3");
  const [width, height] = papers.A3;
  const stripTop = frame.bottom - sheet.strip;
  return {
    name: sheet.name,
    title: `${input.title.job}: ${input.title.speak(input.title.sheet)}, ${input.title.storey}`,
    width,
    height,
    scale: sheet.scale,
    marks: [
      ...sheet.marks,
      ...(sheet.strip > titleBlockSize[1]
        ? ([
            {
              kind: "line",
              from: [frame.left, stripTop],
              to: [frame.right - titleBlockSize[0], stripTop],
              pen: { width: 0.35, colour: ink },
            },
            {
              kind: "line",
              from: [frame.right - titleBlockSize[0], stripTop],
              to: [frame.right - titleBlockSize[0], frame.bottom - titleBlockSize[1]],
              pen: { width: 0.35, colour: ink },
            },
          ] as const)
        : []),
      ...(sheet.rows.length > 0
        ? tableMarks([frame.left, stripTop], {
            columns: deviceColumns(input.title.speak),
            rows: sheet.rows,
            speak: input.title.speak,
          })
        : []),
      ...frameMarks({
        paper: "A3",
        title: { ...input.title, page: sheet.page, pages: sheet.pages },
        scale: sheet.scale,
        shown: new Set(),
        notes: [
          sheet.note ??
            say`Millimetres from finished wall face to the detector's middle; heights from finished floor. * see data sheet`,
        ],
        variant: "colour",
        topLine: sheet.strip <= titleBlockSize[1] ? "drawn" : "none",
      }),
      ...bandMarks(warningOf(input), frame),
    ],
  };
}
