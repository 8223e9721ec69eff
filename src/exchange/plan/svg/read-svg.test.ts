import fc from "fast-check";
import { gzipSync } from "fflate";
import { expect, test } from "vitest";
import { english, say } from "#engine";
import { type Line, linesIn, withoutPartner } from "../../../../test/exchange/same-lines.ts";
import { writtenPdf } from "../../../../test/exchange/written-pdf.ts";
import type { PlanLimits } from "../limits.ts";
import { readPdf } from "../pdf/read-pdf.ts";
import { readSvg } from "./read-svg.ts";

/** Numbers are kept in full; sines and the cubics of arcs round. [drawing units] */
const rounding = 1e-6;

const svg = (inside: string, attributes = 'width="600" height="400"'): Uint8Array =>
  new TextEncoder().encode(
    `<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${inside}</svg>`,
  );
const result = (bytes: Uint8Array, limits: Partial<PlanLimits> = {}) =>
  readSvg(bytes, { fileName: "plan.svg", limits });
const read = async (inside: string, attributes?: string) => {
  const found = await result(svg(inside, attributes));
  if ("problems" in found) throw new Error(JSON.stringify(found.problems));
  return found;
};
const lines = async (inside: string, attributes?: string) =>
  linesIn((await read(inside, attributes)).linework);
const problems = async (bytes: Uint8Array, limits?: Partial<PlanLimits>) => {
  const found = await result(bytes, limits);
  return "problems" in found ? found.problems : [];
};
const near = (
  found: readonly (readonly number[])[],
  wanted: readonly (readonly number[])[],
  off = rounding,
) => {
  const pair = [found, wanted] as unknown as readonly [readonly Line[], readonly Line[]];
  expect(withoutPartner(pair[0], pair[1], off)).toEqual([]);
  expect(withoutPartner(pair[1], pair[0], off)).toEqual([]);
};
const pen = 'stroke="black" fill="none"';

test("a line is where it was drawn, y up from the lower left corner of the sheet", async () => {
  near(await lines(`<line x1="10" y1="20" x2="110" y2="70" ${pen}/>`), [[10, 380, 110, 330]]);
});

test("shapes give the lines of their outlines", async () => {
  near(await lines(`<rect x="10" y="20" width="30" height="40" ${pen}/>`), [
    [10, 380, 40, 380],
    [40, 380, 40, 340],
    [40, 340, 10, 340],
    [10, 340, 10, 380],
  ]);
  near(await lines(`<polyline points="0,400 10,400,10-0" ${pen}/>`), [
    [0, 0, 10, 0],
    [10, 0, 10, 400],
  ]);
  expect(await lines(`<polygon points="0 0 10 0 10 10" ${pen}/>`)).toHaveLength(3);
  near(await lines(`<path d="M10 400h20v-10l-5 5z" ${pen}/>`), [
    [10, 0, 30, 0],
    [30, 0, 30, 10],
    [30, 10, 25, 5],
    [25, 5, 10, 0],
  ]);
});

test("a fill closes a path, but not a single line, which has no inside", async () => {
  near(await lines('<path d="M0 400h10v-5"/>'), [
    [0, 0, 10, 0],
    [10, 0, 10, 5],
    [10, 5, 0, 0],
  ]);
  near(await lines('<path d="M0 400h10" stroke="red"/>'), [[0, 0, 10, 0]]);
});

test("circles and arcs of a path are one arc each; an ellipse is none", async () => {
  const { linework } = await read(
    `<circle cx="100" cy="100" r="40" ${pen}/><path d="M 200 200 A 90 90 0 0 1 290 290" ${pen}/><ellipse cx="400" cy="200" rx="40" ry="20" ${pen}/>`,
  );
  expect(linework.arcs).toHaveLength(2);
  const [circle, arc] = linework.arcs;
  expect(circle!.centre[0]).toBeCloseTo(100, 2);
  expect(circle!.centre[1]).toBeCloseTo(300, 2);
  expect(circle!.to - circle!.from).toBe(2 * Math.PI);
  expect(arc!.radius).toBeCloseTo(90, 1);
  expect(arc!.centre[0]).toBeCloseTo(200, 1);
  expect(arc!.centre[1]).toBeCloseTo(110, 1);
  expect(arc!.from).toBeCloseTo(0, 2);
  expect(arc!.to).toBeCloseTo(Math.PI / 2, 2);
});

test("transforms nest, in the order that they are written", async () => {
  const inside = `<g transform="translate(100 0) scale(2)"><g transform="rotate(90 10 10)"><line x1="10" y1="10" x2="20" y2="10" ${pen}/></g></g>`;
  // Turned about (10, 10), the line runs from there to (10, 20); twice as large and 100 further: (120, 20) to (120, 40).
  near(await lines(inside), [[120, 380, 120, 360]]);
});

test("a drawing keeps its own units, and its width says what they are on paper", async () => {
  const line = `<line x1="0" y1="0" x2="100" y2="0" ${pen}/><text x="5" y="50" font-size="3">1:50</text>`;
  const { linework, report } = await read(line, 'width="420mm" height="297mm" viewBox="0 0 420 297"');
  near(linesIn(linework), [[0, 297, 100, 297]]);
  expect(report.paper.width).toBeCloseTo(0.42, 9);
  expect(linework.unit).toMatchObject({
    name: say`${"mm"} at 1 : ${50}`,
    from: "declared",
    declared: "1:50",
  });
  expect(linework.unit.metres).toBeCloseTo(0.05, 9);
});

test("parts that are put in are drawn where they are put, once each time, and noted as blocks", async () => {
  const { linework } = await read(
    `<defs><g id="door"><line x1="0" y1="0" x2="10" y2="0" ${pen}/></g></defs><use href="#door" x="100" y="400"/><use xlink:href="#door" transform="translate(200 400) rotate(-90)"/>`,
  );
  near(linesIn(linework), [
    [100, 0, 110, 0],
    [200, 0, 200, 10],
  ]);
  expect(linework.blocks.map(({ name, at, turn }) => [name, ...at, Number(turn.toFixed(6))])).toEqual([
    ["door", 100, 0, 0],
    ["door", 200, 0, Number((Math.PI / 2).toFixed(6))],
  ]);
});

test("a symbol is fitted into the place that it is given", async () => {
  const inside = `<symbol id="s" viewBox="0 0 10 10"><line x1="0" y1="0" x2="10" y2="10" ${pen}/></symbol><use href="#s" x="100" y="100" width="50" height="50"/>`;
  near(await lines(inside), [[100, 300, 150, 250]]);
});

test("a part that puts itself in is put in once and mentioned", async () => {
  const { linework, report } = await read(
    `<g id="a"><line x2="10" y2="400" ${pen}/><use href="#b"/></g><defs><g id="b"><use href="#a"/></g></defs>`,
  );
  expect(linework.lines.length).toBeLessThanOrEqual(8);
  expect(report.notes).toContainEqual({ code: "plan-svg-loop", values: { part: "b" } });
});

test("pens come from attributes, inherited ones, style sheets and the element's own style, the later ones first", async () => {
  const { linework } = await read(
    `<style>.wall { stroke: #ff0000; stroke-width: 2 } #special { stroke: lime } /* .x{} */</style>
     <g stroke="blue" fill="none"><line x2="1" y2="1"/><line class="wall" x2="2" y2="1"/><line class="wall" id="special" x2="3" y2="1"/>
     <line class="wall" style="stroke:rgb(0, 0, 0); stroke-width:3" x2="4" y2="1"/><line stroke="none" x2="5" y2="1"/></g>`,
  );
  expect(linework.layers.map((layer) => layer.name)).toEqual([
    "line #0000ff 1",
    "line #ff0000 2",
    "line #00ff00 2",
    "line #000000 3",
  ]);
});

test("groups that are layers keep their names, and what is not displayed is marked so", async () => {
  const { linework } = await read(
    `<g xmlns:p="urn:p" p:groupmode="layer" p:label="Walls" ${pen}><line x2="9"/></g><g xmlns:p="urn:p" p:groupmode="layer" p:label="Old" style="display:none" ${pen}><line x2="9"/></g>`,
  );
  expect(linework.layers.map(({ name, shown }) => [name, shown])).toEqual([
    ["Walls: line #000000 1", true],
    ["Old: line #000000 1", false],
  ]);
});

test("a clip cuts what it is set on", async () => {
  const clip = `<clipPath id="c"><rect x="50" y="50" width="100" height="100"/></clipPath>`;
  near(await lines(`${clip}<g clip-path="url(#c)"><line y1="100" x2="300" y2="100" ${pen}/></g>`), [
    [50, 300, 150, 300],
  ]);
});

test("texts keep their place, height and turn; each line of a text is one", async () => {
  const { texts } = (
    await read(
      `<line x2="9" ${pen}/><g transform="translate(100 100) rotate(-90)"><text font-size="10">Store <tspan font-weight="bold">1.02</tspan></text></g>
       <text font-size="20"><tspan x="10" y="50">Office</tspan><tspan x="10" dy="24">12 m²</tspan></text><text x="300" y="200" text-anchor="middle" font-size="10">AB</text>`,
    )
  ).linework;
  expect(texts.map((text) => text.text)).toEqual(["Store 1.02", "Office", "12 m²", "AB"]);
  expect(texts[0]).toMatchObject({ at: [100, 300], height: 7 });
  expect(texts[0]!.turn).toBeCloseTo(Math.PI / 2, 9);
  expect(texts[1]!.at).toEqual([10, 350]);
  expect(texts[2]!.at).toEqual([10, 326]);
  expect(texts[3]!.at[0]).toBeCloseTo(300 - 5.5, 9);
});

test("two room numbers in one element are two texts where each letter has its place", async () => {
  const { texts } = (
    await read(
      `<line x2="9" ${pen}/><text y="50" font-size="6"><tspan x="0 3 6 9 40 43 46 49">10121014</tspan></text>`,
    )
  ).linework;
  expect(texts.map(({ text, at }) => [text, at[0]])).toEqual([
    ["1012", 0],
    ["1014", 40],
  ]);
});

test("whatever turn, size and place a drawing has, its lines are the same ones moved", async () => {
  const drawing = `<path d="M10 20h80v50" ${pen}/><rect x="20" y="30" width="12" height="14" fill="red"/><path d="M40 40C40 51 49 60 60 60" ${pen}/>`;
  const still = await lines(drawing, "");
  await fc.assert(
    fc.asyncProperty(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.constantFrom(1, -1),
      async (turn, shift, mirror) => {
        const angle = (turn * Math.PI) / 180;
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        const transform = `translate(${shift} 7) rotate(${turn}) scale(${mirror} 1)`;
        const moved = await lines(`<g transform="${transform}">${drawing}</g>`, "");
        // The file's y runs down: its point is (x, -y) here.
        const place = (x: number, y: number) => [
          cos * x * mirror + sin * y + shift,
          -(sin * x * mirror - cos * y + 7),
        ];
        near(
          moved,
          still.map(([x1, y1, x2, y2]) => [...place(x1, y1), ...place(x2, y2)]),
          1e-4,
        );
      },
    ),
    { seed: 12, numRuns: 40 },
  );
});

test("the same drawing as SVG and as PDF gives the same lines", async () => {
  const path = "M 100 100 L 300 100 L 300 250 A 60 60 0 0 1 240 310 L 100 310 Z";
  const bytes = await writtenPdf((to) => {
    to.path(path).stroke();
    to.rect(320, 50, 4, 200).fill();
    to.save()
      .rotate(30, { origin: [450, 200] })
      .rect(400, 150, 100, 100)
      .stroke()
      .restore();
  });
  const pdf = await readPdf(bytes, { fileName: "plan.pdf" });
  const drawn = await lines(
    `<path d="${path}" ${pen}/><rect x="320" y="50" width="4" height="200"/><rect x="400" y="150" width="100" height="100" transform="rotate(30 450 200)" ${pen}/>`,
    'width="600pt" height="400pt" viewBox="0 0 600 400"',
  );
  // PDF is written with three decimals and read in 32 bits.
  near(drawn, "linework" in pdf ? linesIn(pdf.linework) : [], 0.01);
});

test("nothing outside of the file is asked for, nothing is run, no abbreviation is expanded", async () => {
  const { report, linework } = await read(
    `<script>alert(1)</script><use href="other.svg#door"/><image href="https://example.org/x.png" width="9" height="9"/><foreignObject/><line x2="9" ${pen}/>`,
  );
  expect(linework.lines).toHaveLength(4);
  expect(report.leftOut.map(({ what }) => english(what)).sort()).toEqual([
    "foreignObject",
    "picture",
    "script",
    "use",
  ]);
  const bomb = `<!DOCTYPE svg [<!ENTITY a "&b;&b;"><!ENTITY b "&c;&c;"><!ENTITY c SYSTEM "file:///etc/hostname">]><svg xmlns="http://www.w3.org/2000/svg"><line x2="9" stroke="red"/><text y="9">&a;</text></svg>`;
  const found = await result(new TextEncoder().encode(bomb));
  expect("linework" in found && found.linework.texts.map(({ text }) => text)).toEqual(["&a;"]);
  expect("report" in found && found.report.notes).toEqual([{ code: "plan-svg-entities", values: {} }]);
});

test("a packed file and one in another encoding are read", async () => {
  const inside = `<line x2="9" ${pen}/><text y="20">Büro</text>`;
  const packed = await result(gzipSync(svg(inside)));
  expect("linework" in packed && packed.linework.texts[0]!.text).toBe("Büro");
  const latin = `<?xml version="1.0" encoding="ISO-8859-1"?><svg><line x2="9" stroke="red"/><text y="20">Büro</text></svg>`;
  const found = await result(Uint8Array.from(latin, (letter) => letter.charCodeAt(0)));
  expect("linework" in found && found.linework.texts[0]!.text).toBe("Büro");
});

test("a file that is empty, of another kind, broken, without lines or too large says so", async () => {
  const codes = async (...of: Parameters<typeof problems>) => (await problems(...of)).map(({ code }) => code);
  expect(await codes(new Uint8Array())).toEqual(["file-empty"]);
  expect(await problems(new TextEncoder().encode("<!doctype html><p>"))).toEqual([
    { code: "plan-not-svg", values: { found: say`a web page` } },
  ]);
  expect(await codes(new TextEncoder().encode("<svg>\n<g>\n</svg>"))).toEqual(["plan-svg-damaged"]);
  expect(await codes(svg("<g/>"))).toEqual(["plan-svg-empty"]);
  expect(await codes(svg('<image href="data:," width="9" height="9"/>'))).toEqual(["plan-svg-picture-only"]);
  expect(await codes(svg("<g>".repeat(1100) + "</g>".repeat(1100)))).toEqual(["plan-svg-too-deep"]);
  expect(await codes(svg("<g/>"), { bytes: 10 })).toEqual(["plan-too-large"]);
  expect(await codes(gzipSync(new Uint8Array(1e6)), { bytes: 1e5 })).toEqual(["plan-too-large"]);
  expect(await codes(svg(`<rect width="9" height="9" ${pen}/>`), { lines: 3 })).toEqual(["plan-too-much"]);
});

test("parts that multiply are stopped by the limit of elements", async () => {
  const parts = Array.from(
    { length: 30 },
    (_, i) => `<g id="p${i + 1}"><use href="#p${i}"/><use href="#p${i}"/></g>`,
  ).join("");
  const inside = `<defs><g id="p0"/>${parts}</defs><use href="#p30"/>`;
  expect(await problems(svg(inside), { elements: 10_000 })).toEqual([
    { code: "plan-too-much", values: { what: say`elements`, limit: "10 000" } },
  ]);
});
