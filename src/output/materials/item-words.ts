import { figured, type QuoteItem, type Said, say, type Words } from "#engine";

/** Items by the names under which price lists and quotes keep them. */
const items: Readonly<Record<string, Said>> = {
  "ceiling box": say`ceiling box`,
  "tested cover for a fire-rated ceiling": say`tested cover for a fire-rated ceiling`,
  "cable gland": say`cable gland`,
  "push-button": say`push-button`,
  "blanking plate": say`blanking plate`,
  "branch box": say`branch box`,
  connector: say`connector`,
  "fit detector": say`fit detector`,
  "set detector": say`set detector`,
  "test detector": say`test detector`,
  "surface cable": say`surface cable`,
  "test circuit": say`test circuit`,
  "access equipment": say`access equipment`,
  "night work": say`night work`,
  "making good": say`making good`,
  "blanking old switches": say`blanking old switches`,
  "waste disposal": say`waste disposal`,
  "second visit": say`second visit`,
};

/** Items with figures in their names. */
const measured: readonly (readonly [RegExp, (...parts: readonly string[]) => Said])[] = [
  [/^cable (\d+) × (.+)$/, (cores = "", size = "") => say`cable ${cores} × ${figured(size)}`],
  [/^cable, (\d+) cores, section unknown$/, (cores = "") => say`cable, ${cores} cores, section unknown`],
  [
    /^cables without a length, to be measured: (\d+)$/,
    (count = "") => say`cables without a length, to be measured: ${count}`,
  ],
  [/^(.+), above 3 m or on stairs$/, (work = "") => say`${itemWords(work)}, above 3 m or on stairs`],
  [/^detector (\S+)$/, (model = "") => say`detector ${model}`],
];

/** An item as it is shown: price lists, quotes and their CSV keep its English name. A model or an item of somebody's own list stays as it is. */
export function itemWords(item: string): Words {
  const known = items[item];
  if (known) return known;
  for (const [form, words] of measured) {
    const found = form.exec(item);
    if (found) return words(...found.slice(1));
  }
  return item;
}

export const unitWords: Readonly<Record<QuoteItem["unit"], Said>> = {
  piece: say`piece`,
  metre: say`metre`,
  hour: say`hour`,
  sum: say`sum`,
};
