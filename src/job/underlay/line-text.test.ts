import fc from "fast-check";
import { expect, test } from "vitest";
import { linesOfText, textOfLines } from "./line-text.ts";

const millimetre = fc.integer({ min: -90_000_000, max: 90_000_000 }).map((mm) => mm / 1000);

test("Packed and unpacked again, lines on whole millimetres are the same lines", () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(millimetre, millimetre, millimetre, millimetre, fc.integer({ min: 0, max: 65_535 })),
        {
          maxLength: 60,
        },
      ),
      (given) => {
        const lines = Float64Array.from(given.flatMap((one) => one.slice(0, 4)));
        const layerOf = Uint16Array.from(given.map((one) => one[4]));
        const read = linesOfText(textOfLines({ lines, layerOf }))!;
        expect([...read.layerOf]).toEqual([...layerOf]);
        // −0 and 0 are the same place.
        expect([...read.lines].map((value) => value + 0)).toEqual([...lines].map((value) => value + 0));
      },
    ),
    { seed: 7, numRuns: 300 },
  );
});

test("Damaged text gives nothing, and never throws", () => {
  const text = textOfLines({ lines: Float64Array.of(1, 2, 3, 4, 3, 4, 5, 6), layerOf: Uint16Array.of(0, 1) });
  expect(linesOfText(text)).toBeDefined();
  let refused = 0;
  for (let i = 0; i < text.length; i++) {
    const bad = `${text.slice(0, i)}${text[i] === "A" ? "%" : "A"}${text.slice(i + 1)}`;
    if (linesOfText(bad) === undefined) refused++;
  }
  expect(refused).toBeGreaterThan(text.length / 4);
  expect(linesOfText("not base64 at all!")).toBeUndefined();
  expect(linesOfText(text.slice(0, 8))).toBeUndefined();
});

test("A chain of lines takes a few bytes a line", () => {
  const count = 10_000;
  const lines = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    const at = (k: number): readonly [number, number] => [k * 0.125, Math.round(1000 * Math.sin(k)) / 1000];
    lines.set([...at(i), ...at(i + 1)], 4 * i);
  }
  expect(textOfLines({ lines, layerOf: new Uint16Array(count) }).length).toBeLessThan(8 * count);
});
