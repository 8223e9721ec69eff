/** Pieces of a file, one after the other. */
export function concatenated(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Bytes as letters, one for one. */
export const letters = (bytes: Uint8Array): string => new TextDecoder("latin1").decode(bytes);
