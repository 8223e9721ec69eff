import { expect, test } from "vitest";
import { english } from "#engine";
import type { Mark } from "../drawing/mark.ts";
import { type SignatureLine, signaturePages } from "./signature-pages.ts";

const title = {
  job: "Annex",
  client: "",
  site: "",
  storey: "",
  sheet: "Test certificate",
  date: "",
  revision: "",
  drawnBy: "",
  checkedBy: "",
  speak: english,
};
const signed = (given: Partial<SignatureLine>): SignatureLine => ({
  name: "R. Okafor",
  role: "electrician",
  day: "2026-03-02",
  for: "test",
  strokes: [],
  ...given,
});
const marksOf = (signatures: readonly SignatureLine[]): readonly (readonly Mark[])[] =>
  signaturePages(signatures, { title }).map((sheet, i, all) => sheet(i + 1, all.length).marks);
const strokesIn = (marks: readonly Mark[]) => marks.filter((mark) => mark.kind === "polyline");

test("a signature is printed as it was drawn: the same shape, larger or smaller", () => {
  const [marks] = marksOf([
    signed({
      strokes: [
        [
          [0, 0],
          [0.5, 0.36],
          [1, 0],
        ],
      ],
    }),
  ]);
  const [stroke, ...more] = strokesIn(marks!);
  expect(more).toEqual([]);
  const [a, b, c] = stroke!.kind === "polyline" ? stroke!.points : [];
  const width = c![0] - a![0];
  expect(width).toBeGreaterThan(60);
  expect((b![0] - a![0]) / width).toBeCloseTo(0.5, 9);
  expect((b![1] - a![1]) / width).toBeCloseTo(0.36, 9);
});

test("strokes of a strange file stay inside their field, and a dot is seen", () => {
  const [marks] = marksOf([
    signed({
      strokes: [
        [
          [-2, -2],
          [3, 3],
        ],
        [[0.5, 0.1]],
        [],
      ],
    }),
  ]);
  const [long, dot, ...more] = strokesIn(marks!);
  expect(more).toEqual([]);
  const [inside] = strokesIn(
    marksOf([
      signed({
        strokes: [
          [
            [0, 0],
            [1, 0.36],
          ],
        ],
      }),
    ])[0]!,
  );
  expect(long).toEqual(inside);
  expect(dot!.kind === "polyline" && dot!.points.length).toBe(2);
});

test("what nobody has signed leaves a field; more than a page of signatures goes on", () => {
  const texts = (marks: readonly Mark[]) =>
    marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
  expect(texts(marksOf([])[0]!)).toEqual(expect.arrayContaining(["Tested", "Received"]));
  const both = texts(marksOf([signed({}), signed({ for: "hand-over", name: "Owner", role: "" })])[0]!);
  expect(both).not.toContain("Name, role, date:");
  expect(both).toContain("Received, 2026-03-02");
  const many = Array.from({ length: 9 }, (_, i) => signed({ name: `N. ${i}` }));
  expect(marksOf(many)).toHaveLength(2);
  expect(texts(marksOf([signed({ for: "quote", name: "Buyer" })])[0]!)).not.toContain("Buyer, electrician");
});
