import { Gunzip } from "fflate";
import { type Problem, say } from "#engine";
import { megabytes, type PlanLimits } from "../limits.ts";

/** The letters of an SVG file, unpacked where it is packed, or what is wrong with it. */
export function svgText(bytes: Uint8Array, limits: PlanLimits): string | Problem {
  const plain = bytes[0] === 0x1f && bytes[1] === 0x8b ? unpacked(bytes, limits) : bytes;
  if ("code" in plain) return plain;
  if (plain.length > limits.bytes)
    return { code: "plan-too-large", values: { limit: megabytes(limits.bytes) } };
  return new TextDecoder(encodingOf(plain)).decode(plain);
}

const unpacked = (bytes: Uint8Array, limits: PlanLimits): Uint8Array | Problem => {
  const parts: Uint8Array[] = [];
  let total = 0;
  const gunzip = new Gunzip((part) => {
    total += part.length;
    if (total > limits.bytes) throw new RangeError();
    parts.push(part);
  });
  try {
    for (let from = 0; from < bytes.length; from += slice)
      gunzip.push(bytes.subarray(from, from + slice), from + slice >= bytes.length);
  } catch (error) {
    return error instanceof RangeError
      ? { code: "plan-too-large", values: { limit: megabytes(limits.bytes) } }
      : { code: "plan-svg-damaged", values: { line: 1, reason: say`it cannot be unpacked` } };
  }
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

/** Packed bytes that are unpacked in one go: at most about 1000 times this comes out before the limit is looked at. */
const slice = 16_384;

/** By its first bytes, else as its first line says, else UTF-8. */
const encodingOf = (bytes: Uint8Array): string => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 200));
  const said = /^\s*<\?xml[^>]*encoding\s*=\s*["']([\w-]+)["']/.exec(head)?.[1];
  try {
    // A declaration that can be read byte by byte is not in UTF-16, whatever it says.
    return said && !/^utf-?16/i.test(said) ? new TextDecoder(said).encoding : "utf-8";
  } catch {
    return "utf-8";
  }
};
