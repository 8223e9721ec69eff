import { expect, test } from "vitest";
import { sourceFiles } from "./source-files.ts";

/** Lines beyond which a file is a defect. */
const limit = 500;

/** Files allowed to be longer for now, each with its reason. This list only shrinks. */
const exceptions: Readonly<Record<string, string>> = {};

test("[ARC-8] no file is longer than 500 lines", () => {
  const long = [...sourceFiles("src"), ...sourceFiles("src", "tests"), ...sourceFiles("test", "tests")]
    .filter((file) => file.text.split("\n").length > limit && !(file.path in exceptions))
    .map((file) => `${file.path}: ${file.text.split("\n").length} lines`);
  expect(long).toEqual([]);
});

test("[ARC-9] no folder has a name that says nothing", () => {
  const empty = new Set([
    "utils",
    "helpers",
    "common",
    "shared",
    "manager",
    "service",
    "services",
    "data",
    "misc",
  ]);
  const wrong = sourceFiles("src").filter((file) =>
    file.path.split("/").some((part) => empty.has(part.replace(/\.tsx?$/, ""))),
  );
  expect(wrong.map((file) => file.path)).toEqual([]);
});
