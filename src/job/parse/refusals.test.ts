import { expect, test } from "vitest";
import { parseJob } from "./parse-job.ts";

const codesOf = (content: unknown): readonly string[] => {
  const read = parseJob(content);
  return (read.job ? read.notes : read.problems).map(({ code }) => code);
};

const room = (outline: readonly (readonly [number, number])[]) => ({
  format: "roomwake-job",
  version: 1,
  name: "Refusals",
  storeys: [{ id: "s", name: "Ground floor", elevation: 0 }],
  rooms: [{ id: "r", storey: "s", name: "Store", outline }],
});

test.each([
  ["a number in place of a job", 42, "job-other-format"],
  ["another program's file", { format: "something-else" }, "job-other-format"],
  ["a version that never existed", { format: "roomwake-job", version: 0 }, "job-version-unknown"],
  [
    "corners on one line",
    room([
      [0, 0],
      [2, 0],
      [4, 0],
    ]),
    "outline-flat",
  ],
  [
    "a circle of 20 000 corners",
    room(
      Array.from({ length: 20_000 }, (_, i): [number, number] => [
        5 * Math.cos((2 * Math.PI * i) / 20_000),
        5 * Math.sin((2 * Math.PI * i) / 20_000),
      ]),
    ),
    "outline-too-many-corners",
  ],
])("%s is refused by its own code", (_, content, code) => {
  expect(codesOf(content)).toContain(code);
});
