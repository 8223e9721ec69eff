import { expect, test } from "vitest";
import { catalogue, type ProblemCode } from "#engine";
import { sourceFiles } from "./source-files.ts";

const codes = Object.keys(catalogue) as ProblemCode[];
const quoted = (code: string): RegExp => new RegExp(`["'\`]${code}["'\`]`);

test("[CAT-1] every code is lower-case words joined by hyphens", () => {
  expect(codes.filter((code) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(code))).toEqual([]);
});

test("[CAT-2] every entry has a whole sentence, and a remedy that ends as one", () => {
  const wrong = codes.filter((code) => {
    const { message, remedy } = catalogue[code];
    return !/[.?!]$/.test(message) || !/[.?!]$/.test(remedy) || message.length < 15 || remedy.length < 8;
  });
  expect(wrong).toEqual([]);
});

test("[CAT-3] every code is reported somewhere in the program", () => {
  const program = sourceFiles("src").filter((file) => !file.path.startsWith("src/engine/check/catalogue/"));
  expect(codes.filter((code) => !program.some((file) => quoted(code).test(file.text)))).toEqual([]);
});

/** The sentence of a code with its gaps open, as a test would quote it. */
const sentencePattern = (code: ProblemCode): RegExp =>
  new RegExp(
    catalogue[code].message
      .split(/\{\w+\}/)
      .map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
      .join("[^\\n]{1,200}")
      // A sentence that ends in what the machine says is quoted up to there.
      .replace(/\[\^\\n\]\{1,200\}\\\.$/, ""),
  );

test("[CAT-4] every code is produced by some test, which quotes its code or its whole sentence", () => {
  const tests = [...sourceFiles("src", "tests"), ...sourceFiles("test", "tests")].filter(
    (file) => file.path !== "test/architecture/catalogue.test.ts",
  );
  const produced = (code: ProblemCode): boolean =>
    tests.some((file) => quoted(code).test(file.text) || sentencePattern(code).test(file.text));
  expect(codes.filter((code) => !produced(code))).toEqual([]);
});
