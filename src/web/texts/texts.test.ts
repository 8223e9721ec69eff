import { readdirSync, readFileSync } from "node:fs";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, test } from "vitest";
import common from "./en.json" with { type: "json" };
import { isPlain } from "./plain.ts";
import { t } from "./texts.ts";

const web = new URL("../", import.meta.url);

/** The common sentences, and those of each part that loads with its screen. */
const parts = readdirSync(new URL("en/", import.meta.url)).map(
  (file): Readonly<Record<string, string>> =>
    JSON.parse(readFileSync(new URL(`en/${file}`, import.meta.url), "utf8")),
);
const entries = [common as Readonly<Record<string, string>>, ...parts].flatMap((part) =>
  Object.entries(part),
);
const catalogue = Object.fromEntries(entries);

const sources = readdirSync(web, { recursive: true, encoding: "utf8" })
  .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file))
  .map((file) => ({ file, text: readFileSync(new URL(file, web), "utf8") }));

/** A key as code names it: whole, or a template with parts that are filled at run time. */
const named = sources.flatMap(({ file, text }) =>
  [...text.matchAll(/(["`])((?:[a-z][\w-]*|\$\{[^}`]+\})(?:\.(?:[\w-]|\$\{[^}`]+\})+)+)\1/g)].map(
    (match) => ({
      file,
      key: match[2]!,
    }),
  ),
);

const pattern = (key: string): RegExp =>
  new RegExp(
    `^${key
      .split(/\$\{[^}]+\}/)
      .map((fixed) => fixed.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
      .join("[\\w-]+")}$`,
  );

const keys = Object.keys(catalogue);

describe("the catalogue of texts", () => {
  test("every key that t() is called with stands in the catalogue", () => {
    const calls = sources.flatMap(({ file, text }) =>
      [...text.matchAll(/(?<![\w.])t\(\s*(["`])([^"`]+)\1/g)].map((match) => ({ file, key: match[2]! })),
    );
    expect(calls.length).toBeGreaterThan(0);
    expect(calls.filter(({ key }) => !keys.some((known) => pattern(key).test(known)))).toEqual([]);
  });

  test("every key of the catalogue is used by the screen", () => {
    const used = named.map(({ key }) => pattern(key));
    expect(keys.filter((key) => !used.some((one) => one.test(key)))).toEqual([]);
  });

  test("no key stands in two parts", () => {
    expect(parts.length).toBeGreaterThan(0);
    expect(entries.length).toBe(keys.length);
  });

  test("what is shown without the formatter is what the formatter would show", () => {
    const plain = keys.filter((key) => isPlain(catalogue[key]!));
    expect(plain.length).toBeGreaterThan(0);
    for (const key of plain)
      expect(new IntlMessageFormat(catalogue[key]!, "en").format()).toBe(catalogue[key]);
  });

  test("every sentence is readable as an ICU message", () => {
    for (const key of keys) expect(() => new IntlMessageFormat(catalogue[key]!, "en"), key).not.toThrow();
  });

  test("no sentence is empty or ends in a blank", () => {
    expect(keys.filter((key) => catalogue[key]!.trim() !== catalogue[key] || catalogue[key] === "")).toEqual(
      [],
    );
  });

  test("a plural follows its number", () => {
    expect(t("count.detectors", { count: 1 })).toBe("1 detector");
    expect(t("count.detectors", { count: 3 })).toBe("3 detectors");
  });

  test("a name that is not given throws, so that no half sentence is shown", () => {
    expect(() => t("count.detectors")).toThrow();
  });
});
