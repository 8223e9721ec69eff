import type { DetectorModel, Site } from "#engine";

/** An order list, or the models that keep it from being made. */
export type OrderList =
  | { readonly rows: readonly { readonly model: DetectorModel; readonly count: number }[] }
  | { readonly invented: readonly DetectorModel[] };

/** Models and counts of a job. Refused while invented models of the demo are in it: nobody can buy those. */
export function orderList({ models, detectors }: Pick<Site, "models" | "detectors">): OrderList {
  const rows = models
    .map((model) => ({ model, count: detectors.filter((detector) => detector.model === model.id).length }))
    .filter(({ count }) => count > 0);
  const invented = rows.map(({ model }) => model).filter(({ demo }) => demo === true);
  return invented.length > 0 ? { invented } : { rows };
}

/** The list as CSV; a cell that a spreadsheet would take for a formula is made text. */
export function orderCsv(
  rows: readonly { readonly model: DetectorModel; readonly count: number }[],
  heads: readonly [model: string, count: string, cost: string, sum: string],
): string {
  const lines = rows.map(({ model, count }) => [
    model.title,
    String(count),
    model.cost.toFixed(2),
    (model.cost * count).toFixed(2),
  ]);
  return [heads, ...lines].map((cells) => `${cells.map(cell).join(",")}\r\n`).join("");
}

function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
