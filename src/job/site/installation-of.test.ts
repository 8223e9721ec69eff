import { expect, test } from "vitest";
import { parseJob } from "../parse/parse-job.ts";
import { installationOf } from "./installation-of.ts";

const job = (boards: readonly object[]) =>
  parseJob(
    JSON.stringify({
      format: "roomwake-job",
      version: 1,
      name: "One circuit",
      boards,
      circuits: [{ id: "c1", name: "Lighting 1", board: "b1", breaker: "C", rating: 10 }],
    }),
  ).job!;

test("a circuit keeps its board while the board is there, and has none once it is gone", () => {
  const whole = job([{ id: "b1", name: "Sub-board" }]);
  expect(installationOf(whole).circuits).toMatchObject([
    { id: "c1", board: "b1", breaker: "C", rating: 10, rcd: "unknown" },
  ]);
  const { circuits } = installationOf({ ...whole, boards: [] });
  expect(circuits.map(({ id, name }) => [id, name])).toEqual([["c1", "Lighting 1"]]);
  expect(circuits.every(({ board }) => board === undefined)).toBe(true);
});
