import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { planKind } from "./plan-kind.ts";
import { readPlan } from "./read-plan.ts";

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><path d="M10 10H90V90H10Z" fill="none" stroke="#000"/></svg>`;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test("A plan is known by its first bytes, and by its ending where they say nothing", () => {
  const kind = (name: string, text = "") => planKind({ name, bytes: bytes(text) });
  expect(kind("plan.bin", "%PDF-1.7")).toBe("pdf");
  expect(kind("plan.bin", drawing)).toBe("svg");
  expect(kind("plan.DXF")).toBe("dxf");
  expect(["plan.svg", "plan.svgz", "PLAN.SVGZ"].map((name) => kind(name))).toEqual(["svg", "svg", "svg"]);
  expect(["plan.dxfz", "plan.pdfz", "plan.svg.txt", "plan"].map((name) => kind(name))).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

test("A packed SVG drawing is read like the one that was packed", async () => {
  const packed = new Uint8Array(gzipSync(drawing));
  const read = async (fileName: string, content: Uint8Array) => {
    const result = await readPlan({ bytes: content, fileName, limits: {} }, () => {});
    if ("problems" in result) throw new Error(JSON.stringify(result.problems));
    return result.linework.lines;
  };
  expect(await read("plan.svgz", packed)).toEqual(await read("plan.svg", bytes(drawing)));
});
