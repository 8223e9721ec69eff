import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoModels } from "#job";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

/** The same job twice: its detector sees everything that it can, and it is blinded on the side of the door, which lies at -x. */
const model = demoModels.find(({ lens }) => lens !== undefined)!;
const [first] = handWritten.detectors;
const bare = { ...handWritten, models: [model], detectors: [{ ...first, model: model.id }] };
const masked = {
  ...bare,
  detectors: [{ ...bare.detectors[0], masks: [{ from: 100, to: 260, inner: 0, outer: 90 }] }],
};
const named = { bare, masked } as const;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-masked-"));
  for (const [name, job] of Object.entries(named)) {
    await writeFile(join(folder, `${name}.job.json`), JSON.stringify(job));
    await runHere(folder, [
      "pack",
      `${name}.job.json`,
      "-o",
      name,
      "--only",
      "handover,mask,plan,setting-sheets",
    ]);
  }
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function textOf(file: string): Promise<{ readonly text: string; readonly marks: readonly string[] }> {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(join(folder, file))) }).promise;
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => {
      const { items } = await (await pdf.getPage(i + 1)).getTextContent();
      return items.map((item) => ("str" in item ? item.str : "")).join(" ");
    }),
  );
  const marks = ((await pdf.getOutline()) ?? []).map((one) => one.title);
  await pdf.destroy();
  return { text: pages.join(" ").replace(/\s+/g, " "), marks };
}

/** Share of the hall's floor that is seen, as its page says. */
const seen = (text: string): number =>
  Number(/Walking anywhere \d[\d.]* m² \d[\d.]* m² (\d[\d.]*) %/.exec(text)?.[1]);

test("A mask on a lens is in every paper: its template, what is then seen, what it takes, and the setting sheet", async () => {
  const [open, blind] = [await textOf("bare/handover.pdf"), await textOf("masked/handover.pdf")];
  expect(open.marks).not.toContain("Mask templates");
  expect(blind.marks).toContain("Mask templates");
  const template = await textOf("masked/mask-templates.pdf");
  expect(template.text).toContain("B1.01");
  expect(template.text).toContain("100 mm");
  expect(seen(blind.text)).toBeLessThan(seen(open.text) - 10);
  expect(seen(blind.text)).toBeGreaterThan(10);
  expect(blind.text).toMatch(/masked on the lens of B1\.01/);
  expect(open.text).not.toMatch(/masked on the lens/);
  const [one, other] = await Promise.all(
    Object.keys(named).map((name) => textOf(`${name}/setting-sheets.pdf`).then(({ text }) => text)),
  );
  expect(other).not.toBe(one);
});
