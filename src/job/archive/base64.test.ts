import fc from "fast-check";
import { expect, test } from "vitest";
import { base64Of, bytesOfBase64 } from "./base64.ts";

const platform = (bytes: Uint8Array): string => btoa(String.fromCharCode(...bytes));

test("bytes become the base64 that the platform writes, and come back", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 50 }), (bytes) => {
      expect(base64Of(bytes)).toBe(platform(bytes));
      expect(bytesOfBase64(base64Of(bytes))).toEqual(bytes);
    }),
    { seed: 51, numRuns: 300 },
  );
});

test("a text is taken for base64 only if its bytes would be written the same", () => {
  const letter = fc.constantFrom(..."AQgw/+9=é. ");
  fc.assert(
    fc.property(fc.string({ unit: letter, maxLength: 9 }), (text) => {
      const bytes = bytesOfBase64(text);
      if (bytes) expect(platform(bytes)).toBe(text);
      else expect(base64IsOf(text)).toBe(false);
    }),
    { seed: 52, numRuns: 2000 },
  );
});

/** The same question put to the platform. */
function base64IsOf(text: string): boolean {
  try {
    return btoa(atob(text)) === text;
  } catch {
    return false;
  }
}
