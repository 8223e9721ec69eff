import { placeRoom } from "#engine";
import { loadSolver } from "#solver";
import type { PlaceRooms } from "./place-rooms.ts";

/** Places rooms one after another in this thread. */
export const placeHere: PlaceRooms = async (site, work) => {
  const solver = await loadSolver();
  const results = [];
  for (const options of work.rooms) {
    if (work.cancelled.aborted) break;
    const result = await placeRoom(site, options, {
      solver,
      now: () => performance.now() / 1000,
      cancelled: () => work.cancelled.aborted,
      progress: work.progress,
      breathe: () => new Promise((resolve) => setImmediate(resolve)),
    });
    work.finished(result);
    results.push(result);
  }
  return results;
};
