import fc from "fast-check";
import { expect, test } from "vitest";
import { say } from "#engine";
import { rawPdf, writtenPdf } from "../../../../test/exchange/written-pdf.ts";
import { writtenPng } from "../../../../test/exchange/written-picture.ts";
import { type ReadScanOptions, readScan } from "./read-scan.ts";

const read = async (bytes: Uint8Array, options: Partial<ReadScanOptions> = {}) => {
  const result = await readScan(bytes, { page: 1, longest: 600, ...options });
  if ("problems" in result) throw new Error(result.problems.map(({ code }) => code).join());
  return result.scan;
};
const problems = async (bytes: Uint8Array, options: Partial<ReadScanOptions> = {}) => {
  const result = await readScan(bytes, { page: 1, longest: 600, ...options });
  return "problems" in result ? result.problems : [];
};

/** Red, green and blue in the middle of a field, of a page that is cut into so many columns and rows from the upper left. */
const fields = (
  { width, height, pixels }: Awaited<ReturnType<typeof read>>,
  columns: number,
  rows: number,
): number[][][] =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => {
      const at =
        4 *
        (Math.floor(((row + 0.5) / rows) * height) * width + Math.floor(((column + 0.5) / columns) * width));
      expect(pixels[at + 3]).toBe(255);
      return [...pixels.subarray(at, at + 3)];
    }),
  );
const greys = (...of: Parameters<typeof fields>): number[][] =>
  fields(...of).map((row) => row.map(([red, green, blue]) => (red === green && green === blue ? red! : -1)));

const picture = (dictionary: string, bytes: readonly number[]): string =>
  `<< /Type /XObject /Subtype /Image ${dictionary} /Length ${bytes.length} >>\nstream\n${String.fromCharCode(...bytes)}\nendstream`;
const grey = (width: number, bytes: readonly number[]): string =>
  picture(
    `/Width ${width} /Height ${bytes.length / width} /ColorSpace /DeviceGray /BitsPerComponent 8`,
    bytes,
  );
const page = (content: string, objects: readonly string[], more = ""): Uint8Array =>
  rawPdf(content, {
    resources: `/XObject << ${objects.map((_, i) => `/I${i} ${5 + i} 0 R`).join(" ")} >>`,
    objects,
    page: more,
  });
const filling = "q 600 0 0 400 0 0 cm /I0 Do Q";

test("a scanned page becomes a picture that stands upright, its first row at the top", async () => {
  const scan = await read(page(filling, [grey(3, [10, 20, 30, 40, 50, 60])]));
  expect([scan.width, scan.height]).toEqual([3, 2]);
  expect(greys(scan, 3, 2)).toEqual([
    [10, 20, 30],
    [40, 50, 60],
  ]);
});

test("a picture is turned with its page, and as it was laid", async () => {
  const sixths = grey(3, [10, 20, 30, 40, 50, 60]);
  expect(greys(await read(page(filling, [sixths], "/Rotate 90")), 2, 3)).toEqual([
    [40, 10],
    [50, 20],
    [60, 30],
  ]);
  expect(greys(await read(page("q -600 0 0 -400 600 400 cm /I0 Do Q", [sixths])), 3, 2)).toEqual([
    [60, 50, 40],
    [30, 20, 10],
  ]);
  // Through a form that is laid over half the sheet; what is not covered is paper.
  const form =
    "<< /Type /XObject /Subtype /Form /BBox [0 0 1 1] /Matrix [300 0 0 400 0 0] /Resources << /XObject << /I0 5 0 R >> >> /Length 6 >>\nstream\n/I0 Do\nendstream";
  expect(greys(await read(page("/I1 Do", [sixths, form])), 6, 2)).toEqual([
    [10, 20, 30, 255, 255, 255],
    [40, 50, 60, 255, 255, 255],
  ]);
});

test("strips of a page come together, a later picture over an earlier one", async () => {
  const strips = page(
    "q 600 0 0 200 0 200 cm /I0 Do Q q 600 0 0 200 0 0 cm /I1 Do Q q 200 0 0 200 400 0 cm /I0 Do Q",
    [grey(1, [80]), grey(1, [160])],
  );
  expect(greys(await read(strips, { longest: 60 }), 3, 2)).toEqual([
    [80, 80, 80],
    [160, 160, 80],
  ]);
});

test("colours, black and white by the bit, and stencils in the ink of the page are read", async () => {
  const coloured = picture(
    "/Width 2 /Height 1 /ColorSpace /DeviceRGB /BitsPerComponent 8",
    [200, 10, 20, 1, 2, 250],
  );
  expect(fields(await read(page(filling, [coloured])), 2, 1)).toEqual([
    [
      [200, 10, 20],
      [1, 2, 250],
    ],
  ]);
  const bits = picture(
    "/Width 2 /Height 2 /ColorSpace /DeviceGray /BitsPerComponent 1",
    [0b10000000, 0b01000000],
  );
  expect(greys(await read(page(filling, [bits])), 2, 2)).toEqual([
    [255, 0],
    [0, 255],
  ]);
  const stencil = picture("/Width 2 /Height 2 /ImageMask true /BitsPerComponent 1", [0b10000000, 0b01000000]);
  expect(fields(await read(page(`1 0 0 rg ${filling}`, [stencil])), 2, 2)).toEqual([
    [
      [255, 255, 255],
      [255, 0, 0],
    ],
    [
      [255, 0, 0],
      [255, 255, 255],
    ],
  ]);
});

test("a picture that a drawing program put in, packed, is read from the page it stands on", async () => {
  const bytes = await writtenPdf(
    (pen) => {
      pen.moveTo(0, 0).lineTo(10, 0).stroke();
      pen.addPage().image(Buffer.from(writtenPng(300, 200)), 0, 0, { width: 600, height: 400 });
    },
    { compress: true },
  );
  const scan = await read(bytes, { page: 2 });
  expect([scan.width, scan.height]).toEqual([300, 200]);
  expect(greys(scan, 5, 5).flat()).toEqual(new Array(25).fill(200));
});

test("what is finer than was asked for becomes the mean of what lies in each pixel", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 24, maxLength: 24 }),
      async (bytes) => {
        const scan = await read(page(filling, [grey(6, bytes)]), { longest: 3 });
        expect([scan.width, scan.height]).toEqual([3, 2]);
        const whole = bytes.reduce((sum, byte) => sum + byte, 0) / 24;
        const kept =
          greys(scan, 3, 2)
            .flat()
            .reduce((sum, one) => sum + one, 0) / 6;
        // Each pixel is rounded once.
        expect(Math.abs(kept - whole)).toBeLessThanOrEqual(0.5);
      },
    ),
    { seed: 20261126, numRuns: 25 },
  );
});

test("a picture that is too large, packed otherwise or not there, a page that does not exist and no PDF file are told", async () => {
  const one = page(filling, [grey(3, [10, 20, 30, 40, 50, 60])]);
  expect(await problems(one, { limits: { pixels: 5 } })).toEqual([
    {
      code: "plan-pdf-scan-refused",
      values: { page: 1, reason: say`it has more than ${5} pixels` },
    },
  ]);
  const strange = picture(
    "/Width 3 /Height 2 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /JPXDecode",
    [1, 2, 3],
  );
  expect(await problems(page(filling, [strange]))).toEqual([
    {
      code: "plan-pdf-scan-refused",
      values: { page: 1, reason: say`it is packed in a way that is not read here` },
    },
  ]);
  expect(await problems(rawPdf("0 0 m 9 9 l S"))).toEqual([
    { code: "plan-pdf-scan-refused", values: { page: 1, reason: say`there is none on the page` } },
  ]);
  expect(await problems(one, { page: 2 })).toEqual([
    { code: "plan-pdf-no-page", values: { page: 2, pages: 1 } },
  ]);
  expect((await problems(new Uint8Array())).map(({ code }) => code)).toEqual(["file-empty"]);
  expect((await problems(new TextEncoder().encode("<svg/>"))).map(({ code }) => code)).toEqual([
    "plan-not-pdf",
  ]);
  expect((await problems(one, { limits: { bytes: 9 } })).map(({ code }) => code)).toEqual(["plan-too-large"]);
});
