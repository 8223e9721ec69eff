import type { LineText } from "../../linework/linework.ts";

/** A scale that a text on the sheet states. */
export interface StatedScale {
  /** Metres in the building for one metre of paper. */
  readonly scale: number;
  /** The words as printed. */
  readonly text: string;
  /** Sheet that it holds on, where the text says: "1:100 @ A1". */
  readonly sheet?: string;
}

/** Scales that plans of buildings are drawn at. Other ratios in a text are slopes, mixtures and sheet numbers. */
export const usualScales: readonly number[] = [
  25, 30, 40, 48, 50, 75, 96, 100, 125, 150, 192, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 2000,
  2500, 5000,
];

/** The scales that texts state: the one said most often first, one that has the word before it ahead of one that has not. */
export function statedScales(texts: readonly LineText[]): readonly StatedScale[] {
  const found = new Map<number, StatedScale & { readonly weight: number }>();
  for (const { text } of texts) {
    const stated = inText(text);
    if (!stated) continue;
    const before = found.get(stated.scale);
    found.set(stated.scale, {
      ...(before && before.weight >= stated.weight ? before : stated),
      weight: (before?.weight ?? 0) + stated.weight,
    });
  }
  return [...found.values()]
    .sort((a, b) => b.weight - a.weight)
    .map(({ scale, text, sheet }) => ({ scale, text, ...(sheet ? { sheet } : {}) }));
}

const words =
  "scale|scala|schaal|echelle|échelle|escala|m(?:a(?:ß|ss)stab)?|skala|målestok|mittakaava|měřítko";
const worded = new RegExp(`(?:^|[^\\p{L}])(?:${words})[\\s.:=]*1\\s*[:/]\\s*(\\d[\\d.,'’ ]*)`, "iu");
const bare = /(?:^|[\s(])1\s*(:|\/)\s*(\d{2,4})(?![\d.,:/])/u;
const imperial = /(\d+)(?:\s*\/\s*(\d+))?\s*(?:"|”|″|''|in\b\.?)\s*=\s*(\d+)\s*(?:'|’|′|ft\b)/iu;
const sheetSize = /@?\s*\b(A[0-4])\b/;

const inText = (text: string): (StatedScale & { readonly weight: number }) | undefined => {
  const printed = text.trim().slice(0, 60);
  const sheet = sheetSize.exec(text)?.[1];
  const as = (scale: number, weight: number) => ({
    scale,
    text: printed,
    weight,
    ...(sheet ? { sheet } : {}),
  });
  const feet = imperial.exec(text);
  if (feet && Number(feet[1]) > 0) {
    const inches = Number(feet[1]) / Number(feet[2] ?? 1);
    const scale = (12 * Number(feet[3])) / inches;
    return scale >= 4 && scale <= 6000 ? as(scale, 3) : undefined;
  }
  const said = worded.exec(text);
  if (said) {
    const scale = Number(said[1]!.replace(/[.,'’ ](?=\d{3}(?!\d))/g, "").replace(/[^\d].*$/, ""));
    return scale >= 5 && scale <= 10_000 ? as(scale, 3) : undefined;
  }
  const ratio = bare.exec(text);
  const scale = Number(ratio?.[2]);
  // A slash without the word is a date or a sheet number more often than a scale.
  const short = text.length <= 24;
  return ratio?.[1] === ":" && short && usualScales.includes(scale) ? as(scale, 1) : undefined;
};

/** Longer edge of the sheets that drawings are printed on. [m] @source ISO-216 */
export const sheetLength: Readonly<Record<string, number>> = {
  A0: 1.189,
  A1: 0.841,
  A2: 0.594,
  A3: 0.42,
  A4: 0.297,
};
