import { say, type Words } from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { column } from "../wiring/schedules.ts";
import { uprightPages } from "./upright-pages.ts";

/** A part of the pack: its heading, its pages, and parts of its own that have names. */
export interface Section {
  readonly heading: Words;
  readonly sheets: readonly UnnumberedSheet[];
  /** Each begins at a page of the section, counted from 0. */
  readonly within?: readonly { readonly heading: Words; readonly from: number }[];
}

/** The sections with contents in second place, as many pages as the list needs. */
export function withContents(
  [first, ...rest]: readonly [Section, ...Section[]],
  title: Omit<SheetTitle, "page" | "pages">,
): readonly Section[] {
  const parts = rest.filter(({ sheets }) => sheets.length > 0);
  const pagesFor = (count: number): readonly UnnumberedSheet[] => {
    let page = first.sheets.length + count + 1;
    const rows = parts.flatMap(({ heading, sheets, within = [] }): readonly (readonly Words[])[] => {
      const start = page;
      page += sheets.length;
      return [
        [heading, "", String(start)],
        ...within.map((part): readonly Words[] => [" ", part.heading, String(start + part.from)]),
      ];
    });
    return uprightPages({
      name: "contents",
      heading: say`Contents`,
      blocks: [
        { heading: "", columns: [column(say`Part`, 62), column("", 92), column(say`Page`, 18, "end")], rows },
      ],
      title,
      notes: [],
    });
  };
  // The number of lines is fixed, so that the first try says how many pages they take.
  const sheets = pagesFor(pagesFor(1).length);
  return [first, { heading: say`Contents`, sheets }, ...parts];
}
