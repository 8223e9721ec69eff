import { expect, test } from "vitest";
import { say } from "#engine";
import { chunk, exif, segment, writtenJpeg, writtenPng } from "../../../../test/exchange/written-picture.ts";
import { readPicture } from "./read-picture.ts";

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const read = (bytes: Uint8Array) => {
  const result = readPicture(bytes);
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result.picture;
};
const problems = (...of: Parameters<typeof readPicture>) => {
  const result = readPicture(...of);
  return "problems" in result ? result.problems : [];
};
const exifSegment = (orientation: number, order: "II" | "MM" = "MM") =>
  segment(0xe1, [...letters("Exif\0\0"), ...exif(orientation, order)]);

test("the size of a picture is read from its head", () => {
  expect(read(writtenPng(30, 20))).toMatchObject({ format: "png", width: 30, height: 20, orientation: 1 });
  expect(read(writtenJpeg(300, 200))).toMatchObject({
    format: "jpeg",
    width: 300,
    height: 200,
    orientation: 1,
  });
});

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  "a picture held as %i is given as large as it is shown",
  (orientation) => {
    const [width, height] = orientation >= 5 ? [200, 300] : [300, 200];
    for (const order of ["II", "MM"] as const) {
      expect(read(writtenJpeg(300, 200, exifSegment(orientation, order)))).toMatchObject({
        orientation,
        width,
        height,
      });
      expect(read(writtenPng(300, 200, chunk("eXIf", exif(orientation, order))))).toMatchObject({
        orientation,
        width,
        height,
      });
    }
  },
);

test("an orientation that does not exist counts as upright", () => {
  expect(read(writtenJpeg(300, 200, exifSegment(9))).orientation).toBe(1);
});

test("the copy holds no place, no camera and no remark, and its pixels are the same", () => {
  const remarks = [
    ...exifSegment(6),
    ...segment(0xe1, letters("http://ns.example/xap/1.0/\0<gps>52.52</gps>")),
    ...segment(0xed, letters("Photo 3.0\0 by line")),
    ...segment(0xfe, letters("a comment")),
  ];
  const jpeg = read(writtenJpeg(300, 200, remarks));
  expect([...jpeg.bytes]).toEqual([...writtenJpeg(300, 200)]);
  expect(jpeg.removed).toEqual(["EXIF", "XMP", "APP13", "comment"]);
  const png = read(
    writtenPng(30, 20, [...chunk("eXIf", exif(6)), ...chunk("tEXt", letters("Author\0A. N. Other"))]),
  );
  expect([...png.bytes]).toEqual([...writtenPng(30, 20)]);
  expect(png.removed).toEqual(["EXIF", "tEXt"]);
});

test("what hangs behind the end of a picture is left out", () => {
  for (const whole of [writtenJpeg(30, 20), writtenPng(30, 20)]) {
    const picture = read(Uint8Array.from([...whole, ...letters("GPS 52.52")]));
    expect([...picture.bytes]).toEqual([...whole]);
    expect(picture.removed).toEqual(["data after the picture"]);
  }
});

test("colour profiles and the kind of colour stay, since they change the pixels", () => {
  const more = [...segment(0xe2, letters("ICC_PROFILE\0..")), ...segment(0xee, letters("Mark\0d......"))];
  expect([...read(writtenJpeg(30, 20, more)).bytes]).toEqual([...writtenJpeg(30, 20, more)]);
});

test("a picture that is empty, of another kind, cut off, without a size or too large says so", () => {
  const codes = (...of: Parameters<typeof readPicture>) => problems(...of).map(({ code }) => code);
  expect(codes(new Uint8Array())).toEqual(["file-empty"]);
  expect(problems(Uint8Array.from(letters("GIF89a....")))).toEqual([
    { code: "plan-not-picture", values: { found: say`a GIF picture` } },
  ]);
  for (const whole of [writtenJpeg(30, 20), writtenPng(30, 20)]) {
    for (let length = 12; length < whole.length; length += 3)
      expect(codes(whole.subarray(0, length)), `${length}`).toEqual(["plan-picture-damaged"]);
  }
  expect(codes(writtenJpeg(0, 20))).toEqual(["plan-picture-damaged"]);
  expect(problems(writtenJpeg(20_000, 6_000))).toEqual([
    { code: "plan-picture-too-large", values: { pixels: 120, limit: 100 } },
  ]);
  expect(codes(writtenPng(30, 20), { limits: { bytes: 10 } })).toEqual(["plan-too-large"]);
});
