import fc from "fast-check";
import { expect, test } from "vitest";
import { say } from "#engine";
import { type Line, linesIn, withoutPartner } from "../../../../test/exchange/same-lines.ts";
import { rawPdf, writtenPdf } from "../../../../test/exchange/written-pdf.ts";
import type { PlanLimits } from "../limits.ts";
import { readPdf } from "./read-pdf.ts";

/** The format writes coordinates with few digits, and the package keeps them in 32 bits. [pt] */
const rounding = 0.01;

const read = async (bytes: Uint8Array, options: { page?: number; limits?: Partial<PlanLimits> } = {}) => {
  const result = await readPdf(bytes, { fileName: "plan.pdf", ...options });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result;
};
const lines = async (bytes: Uint8Array) => linesIn((await read(bytes)).linework);
const problems = async (bytes: Uint8Array, options: { page?: number; limits?: Partial<PlanLimits> } = {}) => {
  const result = await readPdf(bytes, { fileName: "plan.pdf", ...options });
  return "problems" in result ? result.problems : [];
};
const near = (found: readonly (readonly number[])[], wanted: readonly (readonly number[])[]) => {
  const [a, b] = [found, wanted] as unknown as readonly [readonly Line[], readonly Line[]];
  expect(withoutPartner(a, b, rounding)).toEqual([]);
  expect(withoutPartner(b, a, rounding)).toEqual([]);
};

test("a line is where it was drawn, in points from the lower left corner", async () => {
  near(await lines(rawPdf("10 20 m 110 70 l S")), [[10, 20, 110, 70]]);
});

test("a rectangle gives four lines; stroked or filled, it is told apart by its pen", async () => {
  const { linework } = await read(rawPdf("2 w 1 0 0 RG 0 0 1 rg 10 20 30 40 re S 100 20 3 200 re f"));
  near(linesIn(linework, /^line #ff0000 2$/), [
    [10, 20, 40, 20],
    [40, 20, 40, 60],
    [40, 60, 10, 60],
    [10, 60, 10, 20],
  ]);
  expect(linesIn(linework, /^fill #0000ff$/)).toHaveLength(4);
  expect(linework.layers.map((layer) => layer.colour)).toEqual(["#ff0000", "#0000ff"]);
});

test("transforms nest, and end with the state that they were set in", async () => {
  const content = "q 2 0 0 2 10 0 cm q 0 1 -1 0 0 0 cm 0 0 m 10 0 l S Q 0 0 m 10 0 l S Q 0 0 m 10 0 l S";
  near(await lines(rawPdf(content)), [
    [10, 0, 10, 20],
    [10, 0, 30, 0],
    [0, 0, 10, 0],
  ]);
});

test("a rectangular clip cuts exactly, also when it is turned, and ends with its state", async () => {
  near(await lines(rawPdf("q 50 50 100 100 re W n 0 100 m 300 100 l S Q 0 200 m 300 200 l S")), [
    [50, 100, 150, 100],
    [0, 200, 300, 200],
  ]);
  // A square of edge 100 on its corner at (100, 100): half its diagonal is 70.71.
  near(
    await lines(
      rawPdf(
        "q 0.70711 0.70711 -0.70711 0.70711 100 100 cm -50 -50 100 100 re W n 0.70711 -0.70711 0.70711 0.70711 -141.4214 0 cm 0 100 m 300 100 l S Q",
      ),
    ),
    [[100 - 70.711, 100, 100 + 70.711, 100]],
  );
});

test("of another clip nothing outside of its box shows", async () => {
  const arrow = "50 50 m 150 50 l 100 60 l 150 150 l 50 150 l h W n";
  near(await lines(rawPdf(`${arrow} 0 100 m 300 100 l S 200 10 m 300 10 l S`)), [[50, 100, 150, 100]]);
});

test("a form is drawn each time that it is used, where it is used, inside its own box", async () => {
  const form =
    "<< /Type /XObject /Subtype /Form /BBox [0 0 50 50] /Matrix [1 0 0 1 5 0] /Length 33 >>\nstream\nq 0 10 m 80 10 l S 0 0 m 0 9 l S \nendstream";
  const content = "q 1 0 0 1 100 0 cm /F Do Q q 1 0 0 1 200 0 cm /F Do Q 0 300 m 9 300 l S";
  near(await lines(rawPdf(content, { resources: "/XObject << /F 5 0 R >>", objects: [form] })), [
    [105, 10, 155, 10],
    [105, 0, 105, 9],
    [205, 10, 255, 10],
    [205, 0, 205, 9],
    [0, 300, 9, 300],
  ]);
});

test.each([
  [0, [10, 20, 110, 70]],
  [90, [20, 590, 70, 490]],
  [180, [590, 380, 490, 330]],
  [270, [380, 10, 330, 110]],
])("a page turned by %i degrees is read as it is shown", async (rotate, wanted) => {
  near(await lines(rawPdf("10 20 m 110 70 l S", { page: `/Rotate ${rotate}` })), [wanted]);
});

test("page units that are larger than a point and a page cut from its sheet are honoured", async () => {
  const page = "/UserUnit 2 /CropBox [100 50 500 350]";
  near(await lines(rawPdf("0 100 m 300 100 l S", { page })), [[0, 100, 400, 100]]);
});

test("the background of a page is no line, and neither is what is fully transparent", async () => {
  const resources = "/ExtGState << /None << /ca 0 /CA 0 >> >>";
  near(
    await lines(rawPdf("1 g 0 0 600 400 re f 10 20 m 110 70 l S /None gs 0 0 m 50 50 l S", { resources })),
    [[10, 20, 110, 70]],
  );
});

test("a quarter circle is one arc, flattened within its tolerance", async () => {
  const bytes = await writtenPdf((pen) =>
    pen.moveTo(200, 200).path("M 200 200 A 90 90 0 0 1 290 290").stroke(),
  );
  const { linework } = await read(bytes);
  expect(linework.arcs).toHaveLength(1);
  const [arc] = linework.arcs;
  expect(arc!.radius).toBeCloseTo(90, 1);
  expect(arc!.centre[0]).toBeCloseTo(200, 1);
  expect(arc!.centre[1]).toBeCloseTo(400 - 290, 1);
  expect(arc!.to - arc!.from).toBeCloseTo(Math.PI / 2, 3);
  expect([...linework.arcOf].every((index) => index === 1)).toBe(true);
  for (const [x1, y1, x2, y2] of linesIn(linework)) {
    const middle = Math.hypot((x1 + x2) / 2 - arc!.centre[0], (y1 + y2) / 2 - arc!.centre[1]);
    expect(Math.abs(middle - 90)).toBeLessThan(0.05 + rounding);
  }
});

test("a circle is one arc all the way round, and so is one that was flattened before", async () => {
  const ring = Array.from({ length: 41 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    return `${(400 + 50 * Math.cos(angle)).toFixed(3)} ${(200 + 50 * Math.sin(angle)).toFixed(3)} ${i === 0 ? "m" : "l"}`;
  }).join(" ");
  const drawn = await read(await writtenPdf((pen) => pen.circle(100, 100, 40).stroke()));
  const flattened = await read(rawPdf(`${ring} S`));
  for (const [{ linework }, radius] of [
    [drawn, 40],
    [flattened, 50],
  ] as const) {
    expect(linework.arcs.map((arc) => [Math.round(arc.radius * 10) / 10, arc.to - arc.from])).toEqual([
      [radius, 2 * Math.PI],
    ]);
  }
});

test("a square and a hexagon are no arcs", async () => {
  const hexagon = "150 100 m 125 143.3 l 75 143.3 l 50 100 l 75 56.7 l 125 56.7 l h S";
  expect((await read(rawPdf(`10 20 30 30 re S ${hexagon}`))).linework.arcs).toEqual([]);
});

test("texts keep their place, height and turn", async () => {
  const bytes = await writtenPdf((pen) => {
    pen.moveTo(0, 0).lineTo(10, 10).stroke();
    pen.fontSize(20).text("Office 1.02", 100, 100, { lineBreak: false });
    pen.rotate(-90, { origin: [300, 300] }).text("Store", 300, 300, { lineBreak: false });
  });
  const { texts } = (await read(bytes)).linework;
  expect(texts.map((text) => text.text)).toEqual(["Office 1.02", "Store"]);
  expect(texts[0]!.at[0]).toBeCloseTo(100, 1);
  // pdfkit places a text by its ascent, 0.718 of the size in this face.
  expect(texts[0]!.at[1]).toBeCloseTo(400 - 100 - 0.718 * 20, 0);
  expect(texts[0]!.height).toBeCloseTo(14, 3);
  expect(texts[0]!.turn).toBeCloseTo(0, 6);
  expect(texts[1]!.turn).toBeCloseTo(Math.PI / 2, 6);
});

test("layers of the file keep their names, and what is switched off is marked so", async () => {
  const bytes = rawPdf("/OC /A BDC 0 0 m 10 0 l S EMC /OC /B BDC 0 5 m 10 5 l S EMC 0 9 m 10 9 l S", {
    resources: "/Properties << /A 5 0 R /B 6 0 R >>",
    objects: ["<< /Type /OCG /Name (Walls) >>", "<< /Type /OCG /Name (Furniture) >>"],
  });
  const text = String.fromCharCode(...bytes).replace(
    "/Pages 2 0 R >>",
    "/Pages 2 0 R /OCProperties << /OCGs [5 0 R 6 0 R] /D << /OFF [6 0 R] >> >> >>",
  );
  const { linework } = await read(Uint8Array.from(text, (letter) => letter.charCodeAt(0)));
  expect(linework.layers.map(({ name, lines: count, shown }) => [name, count, shown])).toEqual([
    ["Walls: line #000000 1", 1, true],
    ["Furniture: line #000000 1", 1, false],
    ["line #000000 1", 1, true],
  ]);
});

test("whatever turn, size and place a drawing has, its lines are the same ones moved", async () => {
  const content = "10 20 m 90 20 l 90 70 l S 20 30 12 14 re S 40 40 m 40 51 49 60 60 60 c S";
  const still = await lines(rawPdf(content));
  await fc.assert(
    fc.asyncProperty(
      fc.double({ min: -3.1, max: 3.1, noNaN: true }),
      fc.double({ min: -20, max: 20, noNaN: true }),
      async (turn, shift) => {
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        const matrix = [cos, sin, -sin, cos, 300 + shift, 200].map((value) => value.toFixed(7));
        const moved = await lines(rawPdf(`q ${matrix.join(" ")} cm ${content} Q`));
        const place = (x: number, y: number) => [cos * x - sin * y + 300 + shift, sin * x + cos * y + 200];
        near(
          moved,
          still.map(([x1, y1, x2, y2]) => [...place(x1, y1), ...place(x2, y2)]),
        );
      },
    ),
    { seed: 11, numRuns: 12 },
  );
});

test("of several pages one is read, the first unless another is asked for", async () => {
  const bytes = await writtenPdf((pen) => {
    pen.moveTo(0, 0).lineTo(10, 0).stroke();
    pen.addPage().moveTo(0, 0).lineTo(20, 0).stroke();
  });
  const first = await read(bytes);
  expect(first.report).toMatchObject({ pages: 2, page: 1 });
  expect(first.report.notes).toEqual([{ code: "plan-pdf-first-page", values: { pages: 2 } }]);
  near(linesIn((await read(bytes, { page: 2 })).linework), [[0, 400, 20, 400]]);
  expect(await problems(bytes, { page: 3 })).toEqual([
    { code: "plan-pdf-no-page", values: { page: 3, pages: 2 } },
  ]);
  expect(await problems(bytes, { page: 1.5 })).toEqual([
    { code: "plan-pdf-no-page", values: { page: 1.5, pages: 2 } },
  ]);
});

const image = (size: number) =>
  `<< /Type /XObject /Subtype /Image /Width ${size} /Height ${size} /ColorSpace /DeviceGray /BitsPerComponent 8 /Length ${size * size} >>\nstream\n${"x".repeat(size * size)}\nendstream`;
const withImage = (content: string) =>
  rawPdf(content, { resources: "/XObject << /I 5 0 R >>", objects: [image(8)] });

test("a scanned page is told from a page with nothing on it, and pictures beside lines are mentioned", async () => {
  expect(await problems(withImage("q 600 0 0 400 0 0 cm /I Do Q"))).toEqual([
    { code: "plan-pdf-scan", values: { page: 1, pages: 1 } },
  ]);
  expect(await problems(rawPdf(""))).toEqual([
    { code: "plan-pdf-page-empty", values: { page: 1, pages: 1 } },
  ]);
  const { linework, report } = await read(
    withImage("0 0 m 9 9 l S q 600 0 0 400 0 0 cm /I Do Q 0 9 m 9 9 l S"),
  );
  expect(linework.lines).toHaveLength(8);
  expect(report.notes).toEqual([{ code: "plan-pdf-picture", values: { page: 1 } }]);
});

test("a file that is locked, empty, of another kind, cut off or too large says so", async () => {
  const bytes = await writtenPdf((pen) => pen.moveTo(0, 0).lineTo(10, 0).stroke());
  const locked = await writtenPdf((pen) => pen.moveTo(0, 0).lineTo(9, 0).stroke(), {
    userPassword: "secret",
  });
  const codes = async (...of: Parameters<typeof problems>) => (await problems(...of)).map(({ code }) => code);
  expect(await codes(locked)).toEqual(["plan-pdf-locked"]);
  expect(await codes(new Uint8Array())).toEqual(["file-empty"]);
  expect(await problems(new TextEncoder().encode("<svg></svg>"))).toEqual([
    { code: "plan-not-pdf", values: { found: say`an SVG drawing` } },
  ]);
  expect(await codes(bytes.subarray(0, 200))).toEqual(["plan-pdf-damaged"]);
  expect(await codes(bytes, { limits: { bytes: 100 } })).toEqual(["plan-too-large"]);
  expect(await problems(rawPdf("0 0 9 9 re S"), { limits: { lines: 3 } })).toEqual([
    { code: "plan-too-much", values: { what: say`lines`, limit: "3" } },
  ]);
});

test("a page that is damaged in part is read as far as it goes and says so", async () => {
  const { linework, report } = await read(
    rawPdf("0 0 m 9 0 l S /Missing Do 0 5 m 9 5 l S", { resources: "/XObject << /Missing 99 0 R >>" }),
  );
  expect(linework.lines).toHaveLength(8);
  expect(report.notes.map(({ code }) => code)).toEqual(["plan-pdf-partly-read"]);
});
