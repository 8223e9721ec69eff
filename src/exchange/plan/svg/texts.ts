import { shows } from "../page/clip.ts";
import type { Collector } from "../page/collect.ts";
import { capitalOfSize, widthOfSize } from "../page/letters.ts";
import { placed } from "../page/matrix.ts";
import type { SvgElement } from "./element.ts";
import { lengthOf, numbersOf } from "./lengths.ts";
import type { SvgPlace } from "./place.ts";
import { type StyleRules, type SvgStyle, styleOf } from "./style.ts";

/** Letters that follow each other on one line, with the places that the file gives them. */
interface Run {
  text: string;
  readonly x: readonly number[];
  readonly y: number;
  readonly style: SvgStyle;
}

/** Collects an element of text: each tspan with a place of its own is a text of its own. @source W3C-SVG2, chapter 11 */
export function drawText(
  element: SvgElement,
  place: SvgPlace,
  context: { readonly collector: Collector; readonly rules: StyleRules },
): void {
  const runs: Run[] = [];
  gather(element, { style: place.style, at: { x: [0], y: 0 }, runs, rules: context.rules, depth: 0 });
  for (const run of runs.flatMap(split)) {
    if (run.style.displayed && run.style.visible && run.style.opacity > 0) put(run, place, context.collector);
  }
}

interface Gathering {
  readonly style: SvgStyle;
  /** Where the last text was put: a next line may be given from there. */
  readonly at: { x: readonly number[]; y: number };
  readonly runs: Run[];
  readonly rules: StyleRules;
  readonly depth: number;
}

const gather = (element: SvgElement, inherited: Gathering): void => {
  const { runs, rules, depth, style, at } = inherited;
  const a = element.attributes;
  const against = { em: style.fontSize };
  const first = (text: string | undefined) => lengthOf(text?.trim().split(/[\s,]+/)[0], against);
  const list = numbersOf(a.x);
  const dy = first(a.dy) ?? 0;
  if (a.x !== undefined) at.x = list.length > 1 ? list : [first(a.x) ?? at.x[0]!];
  at.y = (first(a.y) ?? at.y) + dy;
  // Letters that are moved a little belong to the text before them: spacing, raised figures.
  const nextLine = Math.abs(dy) > 0.9 * style.fontSize;
  const places = a.x !== undefined || a.y !== undefined || nextLine;
  if (!nextLine && a.y === undefined && depth > 0) at.y -= dy;
  let begun = depth > 0 && !places && runs.length > 0;
  for (const child of element.children) {
    if (typeof child !== "string") {
      if (depth < 20)
        gather(child, { ...inherited, style: styleOf(child, style, rules).style, depth: depth + 1 });
      continue;
    }
    const text = child.replace(/\s+/g, " ");
    if (text.trim() === "" && runs.length === 0) continue;
    if (begun && runs.length > 0) runs.at(-1)!.text += text;
    else if (text.trim() !== "")
      runs.push({ text, x: [at.x[0]! + (first(a.dx) ?? 0), ...at.x.slice(1)], y: at.y, style });
    else continue;
    begun = true;
  }
};

/** Letters further apart than this belong to another text. [size of the letters] */
const widestGap = 1.5;

/** Where each letter has a place of its own, a wide gap parts one text from the next: two room numbers in one element. */
const split = (run: Run): Run[] => {
  const found: Run[] = [];
  let from = 0;
  for (let i = 1; i <= run.text.length; i++) {
    const gap = Math.abs((run.x[i] ?? Number.NaN) - run.x[i - 1]!);
    if (i < run.text.length && !(gap > widestGap * run.style.fontSize)) continue;
    found.push({ ...run, text: run.text.slice(from, i), x: from === 0 ? run.x : run.x.slice(from) });
    from = i;
  }
  return found;
};

const put = (run: Run, place: SvgPlace, collector: Collector): void => {
  const text = run.text.trim().replace(/\s+/g, " ");
  if (text === "") return;
  const size = run.style.fontSize;
  const width =
    run.x.length > 1 && run.x.length >= text.length
      ? run.x[text.length - 1]! - run.x[0]! + size * widthOfSize
      : text.length * size * widthOfSize;
  const shift = run.style.anchor === "middle" ? width / 2 : run.style.anchor === "end" ? width : 0;
  const { matrix } = place;
  const [x, y] = placed(matrix, run.x[0]! - shift, run.y);
  if (!shows(place.clip, x, y, size)) return;
  collector.text({
    text,
    at: [x, y],
    height: size * capitalOfSize * Math.hypot(matrix[2], matrix[3]),
    turn: Math.atan2(matrix[1], matrix[0]),
    width: width * Math.hypot(matrix[0], matrix[1]),
    layer: collector.layerOf({ group: place.group, kind: "text", colour: "", shown: run.style.displayed }),
  });
};
