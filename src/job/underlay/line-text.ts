import { deflateSync, inflateSync } from "fflate";

/** Lines of an underlay: x1 y1 x2 y2 each [m], and the layer of each. */
export interface UnderlayLines {
  readonly lines: Float64Array;
  readonly layerOf: Uint16Array;
}

/** Most lines that one underlay may hold. */
export const mostUnderlayLines = 2_000_000;

/**
 * Packs lines into text: millimetres, each number as its difference from the one before, in bytes of seven bits, deflated, base64.
 *
 * Chains of lines cost some four bytes a line this way, which a job file and its history can carry.
 *
 * @param underlay - Lines in metres.
 * @returns Text for `underlays[].lines`; what is off the whole millimetre is rounded.
 * @example No lines: ""
 */
export function textOfLines({ lines, layerOf }: UnderlayLines): string {
  if (layerOf.length === 0) return "";
  const bytes: number[] = [];
  let [x, y, layer] = [0, 0, 0];
  const put = (difference: number): void => {
    // Small differences of either sign become small numbers.
    let rest = difference >= 0 ? 2 * difference : -2 * difference - 1;
    while (rest >= 128) {
      bytes.push((rest % 128) + 128);
      rest = Math.floor(rest / 128);
    }
    bytes.push(rest);
  };
  put(layerOf.length);
  for (let i = 0; i < layerOf.length; i++) {
    put(layerOf[i]! - layer);
    layer = layerOf[i]!;
    for (let end = 0; end < 2; end++) {
      const nx = Math.round(lines[4 * i + 2 * end]! * 1000);
      const ny = Math.round(lines[4 * i + 2 * end + 1]! * 1000);
      put(nx - x);
      put(ny - y);
      x = nx;
      y = ny;
    }
  }
  return base64Of(deflateSync(Uint8Array.from(bytes), { level: 6 }));
}

/**
 * The lines of a text that `textOfLines` made.
 *
 * @returns Lines in metres; undefined where the text is damaged.
 * @example "" gives no lines
 */
export function linesOfText(text: string): UnderlayLines | undefined {
  if (text === "") return { lines: new Float64Array(), layerOf: new Uint16Array() };
  try {
    const bytes = inflateSync(bytesOf(text), { out: new Uint8Array(mostUnpacked) });
    let at = 0;
    const take = (): number => {
      let [value, place] = [0, 1];
      for (;;) {
        const byte = bytes[at++];
        if (byte === undefined) throw new RangeError("cut short");
        value += (byte % 128) * place;
        if (byte < 128) break;
        place *= 128;
      }
      return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
    };
    const count = take();
    if (!(count >= 0 && count <= mostUnderlayLines)) return undefined;
    const lines = new Float64Array(4 * count);
    const layerOf = new Uint16Array(count);
    let [x, y, layer] = [0, 0, 0];
    for (let i = 0; i < count; i++) {
      layer += take();
      layerOf[i] = layer;
      for (let end = 0; end < 2; end++) {
        x += take();
        y += take();
        lines[4 * i + 2 * end] = x / 1000;
        lines[4 * i + 2 * end + 1] = y / 1000;
      }
    }
    return { lines, layerOf };
  } catch {
    return undefined;
  }
}

/** Lines never unpack to more: an attack would. [bytes] */
const mostUnpacked = 48_000_000;

const base64Of = (bytes: Uint8Array): string => {
  let text = "";
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
};

const bytesOf = (text: string): Uint8Array => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
