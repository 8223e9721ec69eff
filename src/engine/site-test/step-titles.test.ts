import { expect, test } from "vitest";
import {
  box,
  detectorLike,
  luminaireLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { english } from "../check/index.ts";
import { row } from "../wiring/wiring.fixture.ts";
import { partTitle, stepTitles, workOrder } from "./index.ts";

const site = siteLike({
  rooms: [roomLike({ id: "room", outline: box(0, 0, 6, 4) })],
  models: [roundModel()],
  detectors: [
    detectorLike({
      id: "d1",
      room: "room",
      at: [3, 2],
      masks: [{ from: 0, to: 1, inner: 0, outer: 1 }],
    }),
    detectorLike({ id: "d2", room: "room", at: [5, 2] }),
  ],
  luminaires: [
    luminaireLike({
      id: "exit",
      room: "room",
      at: [1, 1],
      emergency: { taken: "before-contact", senses: "circuit" },
    }),
  ],
});

test("every part of every step is said in words; pairs of conductors are names of their own", () => {
  const parts = workOrder(site, row()).steps.flatMap((step) => step.parts);
  expect(parts.length).toBeGreaterThan(20);
  const bare = parts.filter((part) => typeof partTitle(part) === "string");
  expect(new Set(bare)).toEqual(new Set(["L–L′", "L–N", "L–PE", "L′–N", "L′–PE", "N–PE"]));
});

test("making dead is said in the steps of the trade, in their order", () => {
  const said = workOrder(site, row())
    .steps.filter(({ stage }) => stage === "isolation")
    .map(({ name }) => english(stepTitles[name]));
  expect([...new Set(said)]).toEqual([
    "Disconnect completely",
    "Lock and tag",
    "Prove dead",
    "Earth and short-circuit",
    "Cover live parts nearby",
  ]);
});
