/** Colours 1 to 9, and the greys 250 to 255. */
const fixed: Readonly<Record<number, string>> = {
  1: "#ff0000",
  2: "#ffff00",
  3: "#00ff00",
  4: "#00ffff",
  5: "#0000ff",
  6: "#ff00ff",
  8: "#808080",
  9: "#c0c0c0",
  250: "#333333",
  251: "#505050",
  252: "#696969",
  253: "#828282",
  254: "#bebebe",
};

/** Brightness of the five pairs of colours that share a hue. */
const brightness = [1, 0.65, 0.5, 0.3, 0.15] as const;

/**
 * Colour of a number as drawings write it; undefined for black or white, which is whatever shows on the ground.
 *
 * 10 to 249 are 24 hues, 15° apart, with five brightnesses each, plain and with half the strength.
 *
 * @source FROM-MEMORY
 */
export function colourOf(index: number): string | undefined {
  if (index < 10 || index > 249) return fixed[index];
  const hue = Math.floor((index - 10) / 10) * 15;
  const bright = brightness[Math.floor((index % 10) / 2)]!;
  const least = index % 2 === 1 ? bright / 2 : 0;
  const channel = (offset: number): string => {
    const angle = (hue + offset) % 360;
    const share = angle < 60 ? angle / 60 : angle < 180 ? 1 : angle < 240 ? (240 - angle) / 60 : 0;
    return byte(least + (bright - least) * share);
  };
  return `#${channel(120)}${channel(0)}${channel(240)}`;
}

/** A colour written as one number of three bytes. */
export const trueColour = (value: number): string => `#${(value & 0xffffff).toString(16).padStart(6, "0")}`;

const byte = (share: number): string =>
  Math.round(255 * share)
    .toString(16)
    .padStart(2, "0");
