import { oldPages } from "./old-pages.ts";
import type { TextReader } from "./record.ts";

/** How the texts of a drawing are to be decoded. */
export interface Letters {
  /** The code page as the file names it, or "UTF-8". */
  readonly page: string;
  /** Whether that page can be decoded here; if not, Windows-1252 was taken. */
  readonly known: boolean;
  readonly read: TextReader;
}

/** Drawings of this release and later are written in UTF-8. */
const firstUnicode = 1021;

/**
 * The decoder of a drawing's texts.
 *
 * What the file says is taken first. Writers that do not keep to it are common in one way only: UTF-8 in a drawing that says
 * it has a page of single bytes, or the other way round. Text of single bytes is next to never valid UTF-8 by chance, so that
 * can be told and is put right.
 *
 * @param file.release - Number behind AC in the release of the drawing: 1015, 1021 …; 0 where the file names none
 * @param file.page - Code page as the file names it: "ANSI_1252", "dos850", ""
 */
export function lettersOf(file: { readonly release: number; readonly page: string }): Letters {
  const page = pageOf(file.page);
  if (file.release >= firstUnicode)
    return { page: "UTF-8", known: true, read: reading([utf8, page?.decode ?? latin]) };
  if (!page) return { page: file.page, known: file.page === "", read: reading([utf8, latin]) };
  return { page: file.page, known: true, read: reading(page.wide ? [page.decode] : [utf8, page.decode]) };
}

/** Text of one byte a letter, for names and header variables that are read before the code page is known. */
export const plainLetters: TextReader = (bytes, from, to) => {
  let text = "";
  for (let i = from; i < to; i++) text += String.fromCharCode(bytes[i]!);
  return text;
};

/** Texts longer than this are cut: no sound drawing holds one, and a mangled one would fill the screen. */
const longest = 10_000;

type Decode = (bytes: Uint8Array) => string | undefined;

const reading =
  (ways: readonly Decode[]): TextReader =>
  (bytes, from, to) => {
    const end = Math.min(to, from + longest);
    let text = "";
    for (let i = from; i < end; i++) {
      const byte = bytes[i]!;
      if (byte > 127) return beyondAscii(bytes.subarray(from, end), ways);
      text += String.fromCharCode(byte);
    }
    return text;
  };

const beyondAscii = (bytes: Uint8Array, ways: readonly Decode[]): string => {
  for (const decode of ways) {
    const text = decode(bytes);
    if (text !== undefined) return text;
  }
  return plainLetters(bytes, 0, bytes.length);
};

const strictUtf8 = new TextDecoder("utf-8", { fatal: true });
const utf8: Decode = (bytes) => {
  try {
    return strictUtf8.decode(bytes);
  } catch {
    return undefined;
  }
};

const platform = (label: string): Decode => {
  const decoder = new TextDecoder(label);
  return (bytes) => decoder.decode(bytes);
};

const latin = platform("windows-1252");

const byTable =
  (table: string): Decode =>
  (bytes) => {
    let text = "";
    for (const byte of bytes) text += byte < 128 ? String.fromCharCode(byte) : table[byte - 128]!;
    return text;
  };

/** Pages whose letters take one byte or two. */
export const widePages: Readonly<Record<string, string>> = {
  "932": "shift_jis",
  "936": "gbk",
  "949": "euc-kr",
  "950": "big5",
  "1361": "euc-kr",
};

const singlePages: Readonly<Record<string, string>> = { "866": "ibm866", "874": "windows-874" };

const pageOf = (name: string): { readonly decode: Decode; readonly wide: boolean } | undefined => {
  const spoken = name.trim().toLowerCase();
  if (/^utf-?8$/.test(spoken)) return { decode: utf8, wide: false };
  if (/^(mac|macintosh|mac-roman)$/.test(spoken)) return { decode: platform("macintosh"), wide: false };
  if (/^(ascii|us-ascii)$/.test(spoken)) return { decode: latin, wide: false };
  const part = /^iso[-_ ]?8859[-_ ]?(\d{1,2})$/.exec(spoken)?.[1];
  if (part) return supported(part === "9" ? "windows-1254" : `iso-8859-${part}`);
  const number = /(\d{3,4})$/.exec(spoken)?.[1] ?? "";
  if (number in oldPages) return { decode: byTable(oldPages[number]!), wide: false };
  if (number in widePages) return { decode: platform(widePages[number]!), wide: true };
  if (/^125[0-8]$/.test(number)) return supported(`windows-${number}`);
  return number in singlePages ? supported(singlePages[number]!) : undefined;
};

const supported = (label: string): { readonly decode: Decode; readonly wide: boolean } | undefined => {
  try {
    return { decode: platform(label), wide: false };
  } catch {
    return undefined;
  }
};
