import { expect, test } from "vitest";
import type { Detector } from "#engine";
import { labelText } from "#output";
import { resolveCode, resolveTag } from "./resolve-label.ts";

const detector = (id: string, tag: string): Detector => ({ id, tag, room: "hall" }) as Detector;
const [hall, store, twin] = [detector("d1", "B1.04"), detector("d2", "B1.05"), detector("d3", "B1.05")];
const job = { identity: "job-a", site: { detectors: [hall, store] } };
const label = (fields: Partial<Parameters<typeof labelText>[0]>): string =>
  labelText({ job: "job-a", device: "d1", room: "hall", tag: "B1.04", ...fields });

test("a label of the job leads to its device, whatever its tag is by now", () => {
  expect(resolveCode(label({}), job)).toEqual({ kind: "device", device: hall });
  expect(resolveCode(label({ tag: "B9.99" }), job)).toEqual({ kind: "device", device: hall });
  expect(resolveCode(label({ job: "" }), job)).toEqual({ kind: "device", device: hall });
});

test("a label of another job names it, even where an id is the same", () => {
  expect(resolveCode(label({ job: "job-b" }), job)).toEqual({
    kind: "other-job",
    identity: "job-b",
    tag: "B1.04",
  });
});

test("a label of a device that was replaced leads to the one with its tag; of one that is deleted it says so", () => {
  expect(resolveCode(label({ device: "old" }), job)).toEqual({ kind: "swapped", device: hall });
  expect(resolveCode(label({ device: "old", tag: "B7.01" }), job)).toEqual({ kind: "gone", tag: "B7.01" });
  const doubled = { ...job, site: { detectors: [store, twin] } };
  expect(resolveCode(label({ device: "old", tag: "B1.05" }), doubled)).toEqual({
    kind: "gone",
    tag: "B1.05",
  });
});

test("any other code is no label", () => {
  expect(resolveCode("https://example.org", job)).toEqual({ kind: "no-label", text: "https://example.org" });
});

test("a typed tag is found as people type it; one that several have asks which", () => {
  for (const typed of ["B1.04", "b1.04", " b1 04 ", "B1-04", "B104"])
    expect(resolveTag(typed, job)).toEqual({ kind: "device", device: hall });
  expect(resolveTag("b1.05", { site: { detectors: [store, twin] } })).toEqual({
    kind: "several",
    devices: [store, twin],
  });
  expect(resolveTag("B1.4", job)).toEqual({ kind: "no-tag", tag: "B1.4" });
  expect(resolveTag(" . ", job)).toEqual({ kind: "no-tag", tag: "." });
});
