import { deflateSync } from "fflate";
import { crc32 } from "./crc32.ts";

/** A file to go into a zip. */
export interface ZipFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What is packed already only grows by packing it again. */
  readonly packing: "packed" | "as-it-is";
}

/** The first day that the format knows, 1 January 1980: no file has a time here. */
const noDay = 0x0021;
/** Names are UTF-8. */
const utf8 = 0x0800;
const version = 20;
const localSign = 0x04034b50;
const entrySign = 0x02014b50;
const endSign = 0x06054b50;

/**
 * A zip with these files in their order; the same files give the same bytes.
 *
 * @param limit.ratio - What packs better than this is left as it is, so that a reader with this limit takes it. [1]
 */
export function zipBytes(files: readonly ZipFile[], limit: { readonly ratio: number }): Uint8Array {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  const put = (part: Uint8Array): void => {
    parts.push(part);
    at += part.length;
  };
  for (const { name, bytes, packing } of files) {
    const title = new TextEncoder().encode(name);
    const deflated = packing === "packed" ? deflateSync(bytes, { level: 6 }) : bytes;
    const tooWell = deflated.length * limit.ratio < bytes.length;
    const content = tooWell ? bytes : deflated;
    const method = content === bytes ? 0 : 8;
    // What stands of a file both before it and in the directory.
    const about = numbers(
      [2, version],
      [2, utf8],
      [2, method],
      [2, 0],
      [2, noDay],
      [4, crc32(bytes)],
      [4, content.length],
      [4, bytes.length],
      [2, title.length],
      [2, 0],
    );
    directory.push(
      joined([
        numbers([4, entrySign], [2, version]),
        about,
        numbers([2, 0], [2, 0], [2, 0], [4, 0], [4, at]),
        title,
      ]),
    );
    put(joined([numbers([4, localSign]), about, title]));
    put(content);
  }
  const index = joined(directory);
  const end = numbers(
    [4, endSign],
    [2, 0],
    [2, 0],
    [2, files.length],
    [2, files.length],
    [4, index.length],
    [4, at],
    [2, 0],
  );
  return joined([...parts, index, end]);
}

/** Whole numbers one after the other, the lowest byte first. */
function numbers(...list: readonly (readonly [length: 2 | 4, value: number])[]): Uint8Array {
  return Uint8Array.from(
    list.flatMap(([length, value]) => Array.from({ length }, (_, i) => (value >>> (8 * i)) & 255)),
  );
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
