import { useEffect, useState } from "react";
import { isTrouble } from "../calculate/line.ts";
import { walkLine } from "../calculate/walk-line.ts";
import type { WalkQuestion } from "../calculate/walk-protocol.ts";
import type { Store, Workbench } from "../shell/workbench.ts";

/**
 * Plans the walk tests of rooms beside the screen, one after the other, and keeps them on the workbench as long as the plan is the same.
 *
 * @param rooms - The rooms, the most pressing first. @param extent - How much of them; undefined: as they were planned before, else short.
 * @returns A sentence, where one could not be planned.
 */
export function useWalks(
  store: Store<Workbench>,
  rooms: readonly string[],
  extent?: WalkQuestion["extent"],
): string | undefined {
  const [trouble, setTrouble] = useState<string | undefined>();
  const wanted = rooms.join("\n");
  useEffect(() => {
    const line = walkLine();
    let ended = false;
    let running = false;
    const next = (): string | undefined => {
      const { job, walks } = store.get();
      if (walks.of !== job.site) store.set({ walks: { ...walks, of: job.site, rooms: new Map() } });
      const known = store.get().walks.rooms;
      return wanted
        .split("\n")
        .find((room) => room !== "" && (!known.has(room) || (extent && known.get(room)?.extent !== extent)));
    };
    const work = async (): Promise<void> => {
      if (running) return;
      running = true;
      for (let room = next(); room !== undefined && !ended; room = next()) {
        const { site } = store.get().job;
        const answer = await line.ask({ site, room, extent: extent ?? "short" });
        if (ended || !answer) break;
        if (isTrouble(answer)) {
          setTrouble(answer.sentence);
          break;
        }
        const { walks } = store.get();
        // The plan may have changed meanwhile: what belongs to another is planned again.
        if (walks.of === site)
          store.set({ walks: { ...walks, rooms: new Map(walks.rooms).set(room, answer) } });
      }
      running = false;
    };
    void work();
    const end = store.subscribe(() => {
      if (store.get().job.site !== store.get().walks.of) void work();
    });
    return () => {
      ended = true;
      end();
      line.stop();
    };
  }, [store, wanted, extent]);
  return trouble;
}
