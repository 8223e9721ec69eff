import { figured } from "#engine";
import type { Speak } from "../words/speak.ts";
import { ink, paper } from "./ink.ts";
import type { Mark, PaperPoint } from "./mark.ts";

/** A bar of exactly 100 mm on paper, with the metres that it stands for: whoever copies the sheet can measure what the copier did. */
export function scaleBar(
  at: PaperPoint,
  { scale, speak }: { readonly scale: number; readonly speak: Speak },
): readonly Mark[] {
  const metres = (100 * scale) / 1000;
  const fields = 5;
  const width = 100 / fields;
  const pen = { width: 0.25, colour: ink } as const;
  const boxes = Array.from({ length: fields }, (_, i): Mark => {
    const left = at[0] + i * width;
    return {
      kind: "area",
      rings: [
        [
          [left, at[1]],
          [left + width, at[1]],
          [left + width, at[1] + 2],
          [left, at[1] + 2],
        ],
      ],
      fills: [{ kind: "solid", colour: i % 2 === 0 ? ink : paper }],
      pen,
    };
  });
  const figures = Array.from({ length: fields + 1 }, (_, i): Mark => {
    const value = Number(((metres * i) / fields).toFixed(2));
    return {
      kind: "text",
      at: [at[0] + i * width, at[1] - 1.2],
      text: speak(figured(i === fields ? `${value} m` : String(value))),
      size: 2.5,
      anchor: i === 0 ? "start" : "middle",
      weight: "regular",
      colour: ink,
    };
  });
  return [...boxes, ...figures];
}
