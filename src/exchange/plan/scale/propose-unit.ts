import { figured, joined, type Metres, type Said, say, type Words } from "#engine";
import type { LineArc, UnitProposal } from "../../linework/linework.ts";
import type { MeasuredText } from "../page/collect.ts";
import { type DoorArcs, doorArcsIn, doorLeaf, doorScales } from "./door-arcs.ts";
import { type ScaleBar, scaleBarIn } from "./scale-bar.ts";
import { type StatedScale, sheetLength, statedScales } from "./stated-scale.ts";

/** A drawing on paper whose size in the building is to be told. */
export interface PaperDrawing {
  readonly texts: readonly MeasuredText[];
  readonly lines: Float64Array;
  readonly arcs: readonly LineArc[];
  /** Metres of paper in one drawing unit. */
  readonly paperMetres: Metres;
  /** Word for the drawing unit: "points", "mm". */
  readonly unit: Words;
  /** Longer edge of the sheet. [m] */
  readonly sheetLength: Metres;
  /** Longer edge of the box round all lines. [drawing units] */
  readonly extent: number;
}

/** What one printed size may differ from another by and still be the same: paper shrinks, printers round. */
const sameScale = 0.03;

/**
 * What one drawing unit is in the building: from a printed scale bar and a stated scale, which confirm each other; otherwise
 * from the swings of doors; otherwise a guess that says so.
 */
export function proposeUnit(drawing: PaperDrawing): UnitProposal {
  const bar = scaleBarIn(drawing.texts, drawing.lines);
  const stated = statedScales(drawing.texts)[0];
  const sets = doorArcsIn(drawing);
  if (stated) return fromStated(stated, { drawing, bar, sets });
  if (bar)
    return {
      ...atScale(drawing, bar.metres / drawing.paperMetres),
      metres: bar.metres,
      from: "measured",
      reason: say`The printed scale bar “${bar.text}” was measured.`,
    };
  const swings = scaleOfDoors(drawing, sets);
  if (swings)
    return {
      ...atScale(drawing, swings.scale),
      from: "measured",
      reason: say`${swings.doors.count} door swings are then ${leaves(swings.doors, drawing.paperMetres * swings.scale)} wide.`,
    };
  return {
    ...atScale(drawing, 100),
    from: "guessed",
    reason: say`No scale is stated, and neither a scale bar nor doors tell one; 1 : 100 is a guess.`,
  };
}

interface Evidence {
  readonly drawing: PaperDrawing;
  readonly bar: ScaleBar | undefined;
  readonly sets: readonly DoorArcs[];
}

const fromStated = (stated: StatedScale, { drawing, bar, sets }: Evidence): UnitProposal => {
  const resized = (sheetLength[stated.sheet ?? ""] ?? drawing.sheetLength) / drawing.sheetLength;
  const scale = stated.scale * (Math.abs(resized - 1) < sameScale ? 1 : resized);
  const said =
    scale === stated.scale
      ? say`The sheet states “${stated.text}”`
      : say`The sheet states “${stated.text}”, which holds on ${stated.sheet ?? ""}; this sheet has another size`;
  const proposal = { ...atScale(drawing, scale), declared: stated.text };
  if (bar) {
    const agrees = Math.abs(bar.metres / proposal.metres - 1) < sameScale;
    if (agrees)
      return { ...proposal, from: "declared", reason: say`${said}, and the printed scale bar agrees.` };
    return {
      ...atScale(drawing, bar.metres / drawing.paperMetres),
      metres: bar.metres,
      declared: stated.text,
      from: "measured",
      reason: say`${said}, but the printed scale bar “${bar.text}” measures otherwise: the sheet was resized.`,
    };
  }
  const fitting = sets.find(({ middle }) => isLeaf(middle * proposal.metres));
  const swings = scaleOfDoors(drawing, sets);
  if (fitting || !swings) {
    return {
      ...proposal,
      from: "declared",
      reason: fitting
        ? say`${said}, and door swings of ${leaves(fitting, proposal.metres)} agree.`
        : joined([said, "."], ""),
    };
  }
  const { doors, scale: other } = swings;
  return {
    ...atScale(drawing, other),
    declared: stated.text,
    from: "measured",
    reason: say`${said}, but door swings would then be ${leaves(doors, proposal.metres)} wide; at this scale they are ${leaves(doors, drawing.paperMetres * other)}.`,
  };
};

const isLeaf = (metres: number): boolean => metres > doorLeaf.least && metres < doorLeaf.most;

const atScale = (drawing: PaperDrawing, scale: number): Pick<UnitProposal, "metres" | "paper" | "name"> => ({
  metres: drawing.paperMetres * scale,
  paper: drawing.paperMetres,
  name: say`${drawing.unit} at 1 : ${scale >= 10 ? Math.round(scale) : Number(scale.toPrecision(2))}`,
});

/** A storey is longer than a small room and shorter than the longest buildings. [m] */
const storeyLength = { least: 3, most: 250 } as const;

/** The usual scale that brings the middle door of a set closest to the usual one, and the drawing to a size that buildings have. */
const scaleOfDoors = (
  drawing: PaperDrawing,
  sets: readonly DoorArcs[],
): { readonly scale: number; readonly doors: DoorArcs } | undefined => {
  for (const doors of sets) {
    const off = (scale: number): number =>
      Math.abs(Math.log((doors.middle * drawing.paperMetres * scale) / doorLeaf.usual));
    const scale = [...doorScales].sort((a, b) => off(a) - off(b))[0]!;
    const length = drawing.extent * drawing.paperMetres * scale;
    const sound = length >= storeyLength.least && length <= storeyLength.most;
    if (sound && isLeaf(doors.middle * drawing.paperMetres * scale)) return { scale, doors };
  }
  return undefined;
};

const leaves = (doors: DoorArcs, metres: number): Said => {
  const [least, most] = [(doors.least * metres).toFixed(2), (doors.most * metres).toFixed(2)];
  return least === most ? figured(`${least} m`) : say`${figured(least)} to ${figured(most)} m`;
};
