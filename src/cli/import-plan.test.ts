import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { linesOfText, parseJob } from "#job";
import { writtenBuilding } from "../../test/exchange/written-building.ts";
import { writtenLitRoom } from "../../test/exchange/written-lit-room.ts";
import { writtenPdf } from "../../test/exchange/written-pdf.ts";
import { exif, segment, writtenJpeg, writtenPng } from "../../test/exchange/written-picture.ts";
import { writtenPlan } from "../../test/exchange/written-plan.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-plans-"));
  await writeFile(join(folder, "store.svg"), writtenPlan);
  await writeFile(
    join(folder, "words.svg"),
    "<svg xmlns='http://www.w3.org/2000/svg'><text>Plan</text></svg>",
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function imported(...words: readonly string[]) {
  const { exit, json } = await runHere(folder, ["import", ...words, "--force", "--json"]);
  return { exit, answer: json() };
}

test("A plan at a stated scale: its rooms with names, areas and the doorway between them, the lines kept under them", async () => {
  const { exit, answer } = await imported("store.svg", "--scale", "1:100", "-o", "store.job.json");
  expect(exit).toBe(0);
  const rooms = answer.rooms as { name: string; area: number; height: number }[];
  expect(rooms.map(({ name }) => name).sort()).toEqual(["Archive", "Store"]);
  for (const { area, height } of rooms) {
    expect(area).toBeCloseTo(12, 1);
    expect(height).toBe(2.5);
  }
  expect(answer.openings).toBe(1);
  expect(answer.notes.map((note: { code: string }) => note.code)).toEqual(["plan-heights-assumed"]);
  expect(Object.keys(answer.plan)).toEqual([
    "unit",
    "reason",
    "metres",
    "ceiling",
    "layers",
    "parts",
    "part",
    "pages",
    "page",
  ]);
  const { job } = parseJob(await readFile(join(folder, "store.job.json"), "utf8"));
  expect(job!.underlays).toMatchObject([{ file: "store.svg", shown: true }]);
  expect(job!.underlays[0]!.lines.length).toBeGreaterThan(20);
});

test("Without a scale the assumption is said; another ceiling is taken", async () => {
  const { answer } = await imported("store.svg", "--ceiling", "3.2", "-o", "store.job.json");
  expect(answer.notes.map((note: { code: string }) => note.code)).toContain("plan-unit-assumed");
  for (const room of answer.rooms) expect(room.height).toBe(3.2);
});

test("What cannot be meant is refused with what would do", async () => {
  for (const [words, reason] of [
    [["--unit", "furlong"], "not “furlong”"],
    [["--scale", "0"], "--scale takes a number above 0"],
    [["--page", "1.5"], "--page takes a whole number"],
  ] as const) {
    const { exit, answer } = await imported("store.svg", ...words, "-o", "store.job.json");
    expect(exit).toBe(2);
    expect(JSON.stringify(answer)).toContain(reason);
  }
});

test("A scale is taken by the sheet's own unit of paper, and refused where there is no paper", async () => {
  const { answer } = await imported("store.svg", "--scale", "2.5", "-o", "store.job.json");
  expect(answer.plan.metres).toBeCloseTo(0.0025, 12);
  const lines = ["0", "SECTION", "2", "ENTITIES"];
  lines.push(
    "0",
    "LINE",
    "8",
    "0",
    "10",
    "0",
    "20",
    "0",
    "11",
    "5",
    "21",
    "0",
    "0",
    "ENDSEC",
    "0",
    "EOF",
    "",
  );
  await writeFile(join(folder, "line.dxf"), lines.join("\n"));
  const refused = await imported("line.dxf", "--scale", "100", "-o", "line.job.json");
  expect(refused.exit).toBe(2);
  expect(JSON.stringify(refused.answer)).toContain("plan-scale-without-paper");
});

test("A picture lies under the plan in its size, turned as the camera was held and without its remarks", async () => {
  const remark = segment(0xe1, [...Buffer.from("Exif\0\0"), ...exif(6)]);
  await writeFile(join(folder, "scan.jpg"), writtenJpeg(300, 200, remark));
  const unscaled = await imported("scan.jpg", "-o", "scan.job.json");
  expect(unscaled.exit).toBe(2);
  expect(JSON.stringify(unscaled.answer)).toContain("how many metres one pixel is");
  const { exit, answer } = await imported("scan.jpg", "--unit", "0.02", "-o", "scan.job.json");
  expect(exit).toBe(0);
  expect(answer.picture).toEqual({ width: 4, height: 6, pixel: 0.02, removed: ["EXIF"] });
  const { job } = parseJob(await readFile(join(folder, "scan.job.json"), "utf8"));
  const { picture } = job!.underlays[0]!;
  expect(picture).toMatchObject({ type: "image/jpeg", width: 300, height: 200 });
  expect(Buffer.from(picture!.data, "base64").includes("GPS")).toBe(false);
  await writeFile(join(folder, "broken.png"), "no picture at all");
  const broken = await imported("broken.png", "--unit", "0.02", "-o", "broken.job.json");
  expect(broken.exit).toBe(2);
  expect(JSON.stringify(broken.answer)).toContain("plan-not-picture");
});

test("A scanned page with a few lines on it is taken as a picture, at the scale of its paper", async () => {
  const pdf = await writtenPdf((pen) => {
    pen.image(Buffer.from(writtenPng(1200, 800)), 0, 0, { width: 600, height: 400 });
    // A stamp: some lines that are no plan.
    pen.rect(480, 340, 100, 40).stroke();
  });
  await writeFile(join(folder, "scan.pdf"), pdf);
  const lines = await imported("scan.pdf", "-o", "scan.job.json");
  expect(lines.answer.notes.map(({ code }: { code: string }) => code)).toContain("plan-pdf-picture");
  const unscaled = await imported("scan.pdf", "--picture", "-o", "scan.job.json");
  expect([unscaled.exit, JSON.stringify(unscaled.answer)]).toEqual([
    2,
    expect.stringContaining("--scale of its paper"),
  ]);
  const { exit, answer } = await imported("scan.pdf", "--picture", "--scale", "1:100", "-o", "scan.job.json");
  expect(exit).toBe(0);
  // 600 × 400 points of 1/72 inch at 1 : 100.
  expect(answer.picture).toMatchObject({ width: 21.16667, height: 14.11111 });
  const { job } = parseJob(await readFile(join(folder, "scan.job.json"), "utf8"));
  expect(job!.underlays[0]!.picture).toMatchObject({ type: "image/png", width: 1200, height: 800 });
  const drawing = await imported("store.svg", "--picture", "--scale", "100", "-o", "scan.job.json");
  expect(JSON.stringify(drawing.answer)).toContain("--picture is for a page of a PDF");
});

test("A building model without rooms keeps its walls under the plan", async () => {
  await writeFile(
    join(folder, "shell.ifc"),
    writtenBuilding({ schema: "IFC2X3", unit: "metre", rooms: "none" }),
  );
  const { answer } = await imported("shell.ifc", "-o", "shell.job.json");
  expect(answer.rooms).toEqual([]);
  const { job } = parseJob(await readFile(join(folder, "shell.job.json"), "utf8"));
  expect(linesOfText(job!.underlays[0]!.lines)!.layerOf.length).toBeGreaterThanOrEqual(8);
});

test("A drawing without lines is an error, not an empty job", async () => {
  const { exit, answer } = await imported("words.svg", "-o", "words.job.json");
  expect(exit).toBe(2);
  expect(JSON.stringify(answer)).toMatch(/plan-/);
});

test("Blocks that are said to be luminaires come into their rooms; a name that no block has is answered with those there are", async () => {
  await writeFile(join(folder, "lit.dxf"), writtenLitRoom());
  const { exit, answer } = await imported("lit.dxf", "--luminaires", "lamp", "-o", "lit.job.json");
  expect(exit).toBe(0);
  expect(answer.luminaires).toBe(2);
  expect(answer.leftOut).toContainEqual({ what: "luminaire", why: "lies in no room", count: 1 });
  const { job } = parseJob(await readFile(join(folder, "lit.job.json"), "utf8"));
  expect(job!.luminaires.map(({ room, length, width, turn }) => [room, length, width, turn])).toEqual([
    [job!.rooms[0]!.id, 1.2, 0.3, 0],
    [job!.rooms[0]!.id, 1.2, 0.3, 90],
  ]);
  expect(job!.underlays[0]!.blocks!.map(({ name, places }) => [name, places.length])).toEqual([
    ["Chair", 4],
    ["Lamp", 4],
  ]);
  const refused = await imported("lit.dxf", "--luminaires", "Bulb", "-o", "bulb.job.json");
  expect(refused.exit).toBe(2);
  expect(JSON.stringify(refused.answer)).toContain('"plan-block-unknown"');
  expect(JSON.stringify(refused.answer)).toMatch(/Bulb.*Chair \(4\), Lamp \(4\)/s);
});
