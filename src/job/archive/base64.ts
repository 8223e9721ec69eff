/** Bytes as base64. @example [255] → "/w==" */
export function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}

/** Bytes of a base64 text; undefined where it is none, or where the same bytes would be written otherwise. */
export function bytesOfBase64(text: string): Uint8Array | undefined {
  try {
    const letters = atob(text);
    const bytes = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
    return base64Of(bytes) === text ? bytes : undefined;
  } catch {
    return undefined;
  }
}
