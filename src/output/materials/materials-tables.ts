import {
  english,
  type LabourKind,
  labourDefaults,
  type MaterialLine,
  materialsList,
  type PriceList,
  quoteExtras,
  say,
  spareShares,
  type Words,
} from "#engine";
import { csvOf } from "../csv/csv.ts";
import type { Speak } from "../words/speak.ts";
import { type WorkbookSheet, xlsxOf } from "../xlsx/xlsx.ts";
import { itemWords, unitWords } from "./item-words.ts";
import type { PlanNeeds } from "./needs.ts";

/** The materials of a plan, priced as far as the list goes; an invented model has no price. */
export function materialLines(needs: PlanNeeds, list: PriceList): readonly MaterialLine[] {
  const prices = new Map([...list.prices].filter(([item]) => !needs.invented.has(item)));
  return materialsList(needs.materials, prices);
}

/** Work by the name that a price list calls it. */
export const labourName = (kind: LabourKind): string => kind.replaceAll("-", " ");

const head: readonly Words[] = [
  say`Item`,
  say`Unit`,
  say`Needed`,
  say`Spare %`,
  say`To buy`,
  say`Price`,
  say`Total`,
  say`Remark`,
];

const rounded = (value: number): number => Math.round(value * 10) / 10;

function rowsOf(needs: PlanNeeds, list: PriceList): readonly (readonly (Words | number | undefined)[])[] {
  return materialLines(needs, list).map(({ item, unit, quantity, bought, price, total }) => [
    itemWords(item),
    unitWords[unit],
    rounded(quantity),
    spareShares[unit] * 100,
    bought,
    price,
    total,
    needs.invented.has(item) ? say`invented model: choose a real one before ordering` : "",
  ]);
}

export const materialsCsv = (needs: PlanNeeds, list: PriceList, speak: Speak): string =>
  csvOf([head, ...rowsOf(needs, list).map((row) => row.map((cell) => cell ?? ""))], speak);

/** Materials and minutes as a workbook. */
export function materialsXlsx(needs: PlanNeeds, list: PriceList, speak: Speak): Promise<Uint8Array> {
  const minutes: WorkbookSheet = {
    name: say`Labour`,
    head: [
      { title: say`Work`, width: 24 },
      { title: say`Reach`, width: 12 },
      { title: say`Quantity`, width: 10 },
      { title: say`Minutes each`, width: 14 },
      { title: say`Standing`, width: 34 },
    ],
    rows: needs.work.map(({ kind, reach, number }) => [
      itemWords(labourName(kind)),
      reach === "hard" ? say`above 3 m, stairs` : "",
      rounded(number),
      list.minutes[kind] ?? labourDefaults[kind] / 60,
      list.minutes[kind] === undefined ? say`estimate, replace with your own` : say`from your price list`,
    ]),
  };
  return xlsxOf(
    [
      {
        name: say`Materials`,
        head: head.map((title, i) => ({ title, width: [46, 8, 10, 9, 9, 10, 12, 46][i]! })),
        rows: rowsOf(needs, list),
      },
      minutes,
    ],
    speak,
  );
}

/** The price list to fill in, in English, since it is read back: every item of the plan and every figure of the firm, with what is known of it. `pack --prices` takes it back. */
export function priceListCsv(needs: PlanNeeds, list: PriceList): string {
  const percent = (share: number | undefined): string =>
    share === undefined ? "" : String(Math.round(share * 10_000) / 100);
  const lines = materialLines(needs, list);
  const more = [...list.prices].filter(([item]) => !lines.some((line) => line.item === item));
  // The firm fills it in and `pack --prices` reads it back: one language.
  return csvOf(
    [
      ["item", "unit", "price", "standing", "remark"],
      ["currency", "text", list.currency ?? "", "", ""],
      ...lines.map(({ item, unit, price }) => [
        item,
        unit,
        price ?? "",
        "",
        needs.invented.has(item) ? "invented model: never priced" : "",
      ]),
      ...more.map(([item, price]) => [
        item,
        item.startsWith("cable ") ? "metre" : "piece",
        price,
        "",
        "not in this plan",
      ]),
      ["working hour", "hour", list.hour ?? "", "", ""],
      ...(Object.keys(labourDefaults) as readonly LabourKind[]).map((kind) => [
        labourName(kind),
        "minute",
        list.minutes[kind] ?? labourDefaults[kind] / 60,
        "",
        list.minutes[kind] === undefined ? "estimate" : "",
      ]),
      ...quoteExtras.map((extra) => {
        const known = list.extras.get(extra);
        return [extra, "sum", known?.price ?? "", known?.standing ?? "", "firm, provisional or excluded"];
      }),
      ["overhead", "%", percent(list.overhead), "", ""],
      ["tax", "%", percent(list.tax), "", ""],
      ["validity", "day", list.validity ?? "", "", ""],
    ],
    english,
  );
}
