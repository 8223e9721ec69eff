import { widePages } from "./letters.ts";

/**
 * Letters that a text writes as escapes: `\U+00E6`, and `\M+1` with four hexadecimal digits for a letter of an Asian page.
 *
 * @example `Stue \U+2205` is "Stue ∅"
 */
export function withLetters(text: string): string {
  if (!text.includes("\\")) return text;
  return text
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\M\+([1-5])([0-9A-Fa-f]{4})/g, (whole, page: string, hex: string) => {
      const code = Number.parseInt(hex, 16);
      const label = widePages[asianPages[Number(page) - 1]!];
      return label ? new TextDecoder(label).decode(Uint8Array.of(code >> 8, code & 255)) : whole;
    });
}

const asianPages = ["932", "950", "949", "1361", "936"];

/**
 * A line of text without its percent codes: `%%u`, `%%o` and `%%k` switch lines under, over and through it on and off,
 * `%%d`, `%%p` and `%%c` are °, ± and ⌀, `%%065` is the letter of that number.
 *
 * @example `%%uKITCHEN%%u 3.5 %%p 0.1` is "KITCHEN 3.5 ± 0.1"
 */
export function withoutPercentCodes(text: string): string {
  if (!text.includes("%%")) return text;
  return text.replace(/%%(\d{3}|.)/gsu, (whole, code: string) => {
    if (/^\d{3}$/.test(code)) return String.fromCharCode(Number(code));
    const sign = percentCodes[code.toLowerCase()];
    return sign ?? whole;
  });
}

const percentCodes: Readonly<Record<string, string>> = {
  u: "",
  o: "",
  k: "",
  d: "°",
  p: "±",
  c: "⌀",
  "%": "%",
};

/** Text of one line: escapes and percent codes resolved, control characters and blanks at its ends taken off. */
export const lineText = (raw: string): string => tidy(withoutPercentCodes(withLetters(raw)));

/**
 * Lines of a text with formatting inside it: heights, fonts, colours, tabs and braces are taken out, stacked fractions are
 * written with a stroke, paragraphs become lines.
 *
 * @example `{\fSans|b1;Room 3}\P12 m\S2^ ;` is "Room 3" and "12 m2"
 */
export function paragraphs(raw: string): readonly string[] {
  const plain = raw
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (whole) => withLetters(whole))
    .replace(/\\M\+[1-5][0-9A-Fa-f]{4}/g, (whole) => withLetters(whole))
    .replace(formatting, (whole, stack: string | undefined, kept: string | undefined) => {
      if (stack !== undefined) return stacked(stack);
      if (kept !== undefined) return kept;
      if (/^(\\[PNX]|\^J|\n)$/.test(whole)) return "\n";
      if (whole === "\\~" || whole === "^I") return " ";
      return whole === "^ " ? "^" : "";
    });
  return withoutPercentCodes(plain).split("\n").map(tidy);
}

/** 1: a stack; 2: a letter that stands for itself. The rest is either a line end, a blank or nothing. */
const formatting =
  /\\S((?:\\.|[^;\\])*);|\\([\\{}])|\\[PNX~LlOoKk]|\\p[^;]*;|\\[ACcFfHQTW][^;\\]*;|[{}]|\^[IJM ]|\n/g;

const stacked = (content: string): string => {
  const [over = "", under = ""] = content.replace(/\\(.)/g, "$1").split(/[\^/#]/, 2);
  const parts = [over.trim(), under.trim()].filter((part) => part !== "");
  return parts.join("/");
};

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out.
const tidy = (text: string): string => text.replace(/[\u0000-\u001f\u007f]+/g, " ").trim();
