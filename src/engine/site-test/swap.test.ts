import { describe, expect, test } from "vitest";
import { box, detectorLike, doorLike, roomLike, roundModel, siteLike } from "../../../test/engine/records.ts";
import type { Site } from "../site/index.ts";
import { wiringOfSite } from "../wiring/index.ts";
import type { SiteEntry } from "./site-entry.ts";
import type { Station } from "./station.ts";
import { partedBySwaps } from "./swap.ts";
import { roomVerdict, type StationReading } from "./verdict.ts";
import { walkTest } from "./walk-test.ts";
import { workOrder } from "./work-order.ts";
import { workState } from "./work-state.ts";

const site = siteLike({
  rooms: [roomLike({ id: "hall", outline: box(0, 0, 14, 4), use: "passing" })],
  openings: [doorLike({ id: "in", rooms: ["hall", null], from: [0, 1.5], to: [0, 2.4] })],
  models: [roundModel()],
  detectors: [
    detectorLike({ id: "d1", tag: "B1.01", room: "hall", at: [3, 2] }),
    detectorLike({ id: "d2", tag: "B1.02", room: "hall", at: [11, 2] }),
  ],
});
const swapped: Site = {
  ...site,
  detectors: site.detectors.map((one) => (one.id === "d2" ? { ...one, fitted: "x1" } : one)),
};
const swaps = [{ detector: "d2", time: "2027-01-12T09:00:00.000Z" }];
const parted = (entries: readonly SiteEntry[]) =>
  partedBySwaps(entries, { swaps, detectors: site.detectors });
const entry = (id: string, given: Partial<SiteEntry>): SiteEntry => ({
  id,
  time: "2026-11-26T10:00:00.000Z",
  about: { kind: "detector", id: "d2" },
  step: "height",
  outcome: "read",
  value: site.detectors[1]!.height,
  ...given,
});

describe("After a device was exchanged", () => {
  test("[VE-5] only the stations that name it are to be walked again", () => {
    const test_ = walkTest(site, "hall", { extent: "full" });
    const read = (station: Station): StationReading => ({
      id: station.id,
      station: station.id,
      basis: station.basis,
      seen: station.expected.kind !== "not-seen",
      recorded: "2026-11-26T10:00:00.000Z",
      ...("distance" in station.expected ? { distance: station.expected.distance } : {}),
    });
    const readings = [...test_.stations, ...test_.others].map(read);
    const before = roomVerdict(test_, readings);
    expect(before.check.actual).toBe(before.stations.length);
    const after = roomVerdict(walkTest(swapped, "hall", { extent: "full" }), readings);
    const open = after.stations.filter(({ check }) => check.verdict === "not-proven");
    expect(open.length).toBeGreaterThan(0);
    expect(open.length).toBeLessThan(after.stations.length);
    for (const { station, check } of after.stations)
      expect(check.verdict, station.id).toBe(station.devices.includes("d2") ? "not-proven" : "pass");
    // What was read before is still there.
    expect(after.stations.every(({ latest }) => latest !== undefined)).toBe(true);
  });

  test("[WO-5] its own steps and the closing of its room's walk test are open again; the other's are not", () => {
    const order = workOrder(site, wiringOfSite(site, { boards: [], circuits: [] }).model);
    const entries = [
      entry("a", {}),
      entry("b", { about: { kind: "detector", id: "d1" } }),
      entry("c", { about: { kind: "room", id: "hall" }, step: "walk-test", outcome: "passed" }),
    ];
    const status = (of: readonly SiteEntry[], id: string): string | undefined =>
      workState(order, of).steps.get(id)?.status;
    for (const id of ["height:detector:d2", "height:detector:d1", "walk-test:room:hall"])
      expect(status(entries, id), id).toBe("done");
    const { standing } = parted(entries);
    expect(status(standing, "height:detector:d2")).not.toBe("done");
    expect(status(standing, "height:detector:d1")).toBe("done");
    expect(status(standing, "walk-test:room:hall")).not.toBe("done");
    const again = parted([...entries, entry("d", { time: "2027-01-12T09:30:00.000Z" })]);
    expect(status(again.standing, "height:detector:d2")).toBe("done");
  });

  test("nothing is lost: what does not stand is kept apart, but for what was withdrawn", () => {
    const entries = [
      entry("a", {}),
      entry("b", { about: { kind: "detector", id: "d1" } }),
      entry("c", { time: "2027-01-12T09:30:00.000Z" }),
      entry("d", { value: 3.5, time: "2026-11-26T09:00:00.000Z" }),
      entry("e", { outcome: "withdrawn", of: "d", time: "2026-11-26T09:10:00.000Z" }),
    ];
    const { standing, before } = parted(entries);
    expect(before.map(({ id }) => id)).toEqual(["a"]);
    expect(standing.map(({ id }) => id)).toEqual(["b", "c"]);
    expect(partedBySwaps(entries, { swaps: [], detectors: site.detectors }).standing).toBe(entries);
  });

  test("clocks of other zones count as moments, and the last of several swaps decides", () => {
    const early = entry("a", { time: "2027-01-12T09:30:00.000+01:00" });
    expect(parted([early]).before).toEqual([early]);
    const later = { detector: "d2", time: "2027-06-01T08:00:00.000Z" };
    const between = entry("b", { time: "2027-03-01T08:00:00.000Z" });
    for (const order of [
      [swaps[0]!, later],
      [later, swaps[0]!],
    ])
      expect(partedBySwaps([between], { swaps: order, detectors: [] }).before).toEqual([between]);
  });
});
