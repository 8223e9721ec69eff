import { unzlibSync } from "fflate";
import { expect, test } from "vitest";
import { readPicture } from "./read-picture.ts";
import { writtenPng } from "./written-png.ts";

/** Pixels of a PNG picture without interlacing whose rows are stored as differences, by the book. */
function pixelsOf(png: Uint8Array): { colour: number; rows: number[][] } {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const colour = png[25]!;
  const wide = view.getUint32(16) * (colour === 0 ? 1 : 3);
  const length = view.getUint32(33);
  const body = unzlibSync(png.subarray(41, 41 + length));
  const rows: number[][] = [];
  for (let at = 0; at < body.length; at += wide + 1) {
    expect(body[at]).toBe(1);
    const row: number[] = [];
    for (let x = 0; x < wide; x++)
      row.push(((row[x - (colour === 0 ? 1 : 3)] ?? 0) + body[at + 1 + x]!) & 255);
    rows.push(row);
  }
  return { colour, rows };
}

test("Pixels come out as they went in, greys in one byte and colours in three", () => {
  const grey = Uint8ClampedArray.of(10, 10, 10, 255, 250, 250, 250, 255, 0, 0, 0, 255, 7, 7, 7, 255);
  expect(pixelsOf(writtenPng({ width: 2, height: 2, pixels: grey }))).toEqual({
    colour: 0,
    rows: [
      [10, 250],
      [0, 7],
    ],
  });
  const colours = Uint8ClampedArray.of(1, 2, 3, 255, 200, 100, 0, 255);
  const png = writtenPng({ width: 2, height: 1, pixels: colours });
  expect(pixelsOf(png)).toEqual({ colour: 2, rows: [[1, 2, 3, 200, 100, 0]] });
  const read = readPicture(png);
  expect("picture" in read && [read.picture.width, read.picture.height, read.picture.removed]).toEqual([
    2,
    1,
    [],
  ]);
});
