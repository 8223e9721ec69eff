import { type RoomVerdict, roomVerdict } from "#engine";
import { stationReadings } from "#job";

import type { PlannedWalk } from "../calculate/walk-protocol.ts";
import type { OpenJob } from "../contract.ts";

/** What is known of a room whose walk test is planned. */
export const verdictOf = (job: OpenJob, { test }: PlannedWalk): RoomVerdict =>
  roomVerdict(test, stationReadings(job.kept.testEntries, test.room));

/** How far a room is: of its stations so many were walked, so many of them failed. */
export function progressOf({ stations }: RoomVerdict): {
  readonly all: number;
  readonly walked: number;
  readonly failed: number;
} {
  const has = (verdict: string): number => stations.filter(({ check }) => check.verdict === verdict).length;
  return { all: stations.length, walked: has("pass") + has("fail"), failed: has("fail") };
}
