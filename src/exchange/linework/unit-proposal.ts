import { figured, type Metres, type Said, say, type Words } from "#engine";
import { doorSwings } from "./door-swings.ts";
import type { LineArc, LineText, UnitProposal } from "./linework.ts";

/** A drawing in model coordinates, one unit being one of the usual ones. */
export interface ModelDrawing {
  readonly lines: Float64Array;
  readonly arcs: readonly LineArc[];
  readonly texts: readonly LineText[];
  /** What the file says of itself. */
  readonly declared?: { readonly name: string; readonly metres: Metres };
}

interface Candidate {
  readonly name: string;
  readonly word: Words;
  readonly metres: Metres;
}

const candidates: readonly Candidate[] = [
  { name: "mm", word: say`millimetres`, metres: 0.001 },
  { name: "cm", word: say`centimetres`, metres: 0.01 },
  { name: "m", word: say`metres`, metres: 1 },
  { name: "in", word: say`inches`, metres: 0.0254 },
  { name: "ft", word: say`feet`, metres: 0.3048 },
  { name: "dm", word: say`decimetres`, metres: 0.1 },
];

/** Door leaves and the quarter circles they leave. [m] @source COMMON-PRACTICE */
const doorRadius = { least: 0.6, most: 1.3 } as const;
/** Heights of letters in a model. [m] @source COMMON-PRACTICE */
const letterHeight = { least: 0.05, most: 0.5 } as const;
/** Longer side of a drawing of one building. [m] @source COMMON-PRACTICE */
const extent = { least: 3, most: 500 } as const;

/** Letters outside of these are a wrong unit, not a strange taste: titles may be large, legends small. [m] @source COMMON-PRACTICE */
const anyLetter = { least: 0.02, most: 2.5 } as const;

/** Fewer than these could be anything. */
const fewestDoors = 2;
const fewestTexts = 3;

/** How a drawing looks in one unit. */
interface Fit {
  readonly unit: Candidate;
  readonly length: Metres;
  readonly isBuilding: boolean;
  /** Quarter circles that could be doors, and their least and largest radius. */
  readonly doors: number;
  readonly leaf: readonly [Metres, Metres];
  /** Share of texts with letters of a height that can be read in a model. */
  readonly readable: number;
}

/**
 * What one unit of a drawing is. The file's own word is kept where doors, letters and extents allow it; otherwise the unit
 * that fits them best is proposed, with the reason.
 *
 * @example Declared millimetres, but the drawing is 964 units long and its door swings have radii of 30 and 36: inches.
 */
export function proposeDrawingUnit(drawing: ModelDrawing): UnitProposal {
  const length = lengthOf(drawing.lines);
  const swings = doorSwings(drawing);
  // Quarter circles without a leaf are corners of furniture as often as doors: they help to guess, but overrule nobody.
  const sure = swings.withLeaf.length >= fewestDoors;
  const radii = sure ? swings.withLeaf : swings.quarters;
  const heights = drawing.texts.map(({ height }) => height);
  const fitOf = (unit: Candidate): Fit => {
    const leaves = radii
      .map((radius) => radius * unit.metres)
      .filter((r) => r >= doorRadius.least && r <= doorRadius.most);
    const size = length * unit.metres;
    return {
      unit,
      length: size,
      isBuilding: size >= extent.least && size <= extent.most,
      doors: leaves.length,
      leaf: leaves.reduce<readonly [number, number]>(
        ([a, b], r) => [Math.min(a, r), Math.max(b, r)],
        [Infinity, 0],
      ),
      readable: share(heights, {
        least: letterHeight.least / unit.metres,
        most: letterHeight.most / unit.metres,
      }),
    };
  };
  const fits = candidates.map(fitOf);
  const possible = fits.some(({ isBuilding }) => isBuilding)
    ? fits.filter(({ isBuilding }) => isBuilding)
    : fits;
  const doors = Math.max(...possible.map((fit) => fit.doors));
  const readable = Math.max(...possible.map((fit) => fit.readable));
  const evidence = {
    doors: doors >= fewestDoors ? doors : 0,
    readable: heights.length >= fewestTexts ? readable : 0,
  };
  const middle = [...heights].sort((a, b) => a - b)[heights.length >> 1] ?? 0;
  const lettersPossible = ({ unit }: Fit): boolean =>
    heights.length < fewestTexts ||
    (middle * unit.metres >= anyLetter.least && middle * unit.metres <= anyLetter.most);
  const suits = (fit: Fit): boolean =>
    fit.isBuilding &&
    lettersPossible(fit) &&
    (!sure || evidence.doors === 0 || fit.doors >= evidence.doors / 2);
  const { declared } = drawing;
  const own = declared && fitOf({ name: declared.name, word: wordOf(declared), metres: declared.metres });
  if (own && suits(own))
    return {
      metres: own.unit.metres,
      name: own.unit.name,
      declared: own.unit.name,
      from: "declared",
      reason: say`The file says ${own.unit.word}, and ${sizes(own)}.`,
    };
  const best = [...possible].sort((a, b) => rank(b, evidence) - rank(a, evidence))[0]!;
  const proposal = {
    metres: best.unit.metres,
    name: best.unit.name,
    ...(own ? { declared: own.unit.name } : {}),
  };
  const misfits = own && misfit(own, lettersPossible(own));
  const { word } = best.unit;
  const measured = best.isBuilding && (evidence.doors > 0 || (evidence.readable > 0 && best.readable >= 0.5));
  if (measured)
    return {
      ...proposal,
      from: "measured",
      reason: misfits
        ? say`The file says ${own.unit.word}, but ${misfits}; in ${word} ${sizes(best)}.`
        : say`The file says no unit; in ${word} ${sizes(best)}.`,
    };
  const long = metres(best.length);
  return {
    ...proposal,
    from: "guessed",
    reason: misfits
      ? say`The file says ${own.unit.word}, but ${misfits}; in ${word} it is ${long} m long, but neither doors nor texts confirm it.`
      : say`The file says no unit; in ${word} it is ${long} m long, but neither doors nor texts confirm it.`,
  };
}

/** Doors count most, then letters; what is left is decided by the usual size and the usual unit. */
const rank = (fit: Fit, evidence: { doors: number; readable: number }): number => {
  const doors = evidence.doors > 0 ? fit.doors / evidence.doors : 0;
  const letters = evidence.readable > 0 ? fit.readable / evidence.readable : 0;
  return 6 * doors + 4 * letters - Math.abs(Math.log(fit.length / usualLength)) - rarity[fit.unit.name]!;
};

/** A plan of a storey is most often about this long. [m] @source COMMON-PRACTICE */
const usualLength: Metres = 25;
/** How much worse a usual unit must fit before a rarer one is taken. [powers of e in the length] @source COMMON-PRACTICE */
const rarity: Readonly<Record<string, number>> = { mm: 0, cm: 0, m: 0, in: 1, ft: 1.5, dm: 2 };

const wordOf = (unit: { readonly name: string }): Words =>
  candidates.find(({ name }) => name === unit.name)?.word ?? unit.name;

const sizes = (fit: Fit): Said => {
  const length = say`the drawing is ${metres(fit.length)} m long`;
  if (fit.doors === 0) return length;
  const [least = "", most = ""] = fit.leaf.map((radius) => radius.toFixed(2));
  const wide = least === most ? figured(`${least} m`) : say`${figured(least)} to ${figured(most)} m`;
  return fit.doors === 1
    ? say`one door swing is ${wide} wide and ${length}`
    : say`${fit.doors} door swings are ${wide} wide and ${length}`;
};

const misfit = (fit: Fit, lettersPossible: boolean): Said => {
  if (!fit.isBuilding) return say`the drawing would be ${metres(fit.length)} m long`;
  return lettersPossible
    ? say`its doors would not be as wide as doors are`
    : say`its letters would not be as high as letters are`;
};

const metres = (length: Metres): Said =>
  figured(length >= 10 && length < 1e6 ? length.toFixed(0) : Number(length.toPrecision(2)).toString());

const share = (
  values: readonly number[],
  range: { readonly least: number; readonly most: number },
): number =>
  values.length === 0 ? 0 : values.filter((v) => v >= range.least && v <= range.most).length / values.length;

/** Ends looked at for the size of a drawing; more would not change it. */
const mostEnds = 50_000;

/** Longer side of the box round a drawing without its outermost hundredth on each side: stray specks far away are common. */
const lengthOf = (lines: Float64Array): number => {
  const ends = lines.length / 2;
  const step = Math.max(1, Math.ceil(ends / mostEnds));
  const side = (offset: 0 | 1): number => {
    const values: number[] = [];
    for (let i = 0; i < ends; i += step) values.push(lines[2 * i + offset]!);
    values.sort((a, b) => a - b);
    const trim = values.length >= 200 ? Math.floor(values.length / 100) : 0;
    return values[values.length - 1 - trim]! - values[trim]!;
  };
  return Math.max(side(0), side(1));
};
