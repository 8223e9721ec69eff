import { useCallback, useEffect, useRef, useState } from "react";
import type { PlacementOptions, PlacementProgress, PlacementResult, Site } from "#engine";
import type { Calculations } from "../contract.ts";

/** Where placing one room stands. */
export type RoomRun =
  | { readonly state: "waiting" }
  /** Stopped before its turn came. */
  | { readonly state: "left" }
  | { readonly state: "running"; readonly step: PlacementProgress | undefined }
  | { readonly state: "done"; readonly result: PlacementResult }
  | { readonly state: "failed"; readonly message: string };

export type RunOptions = Omit<PlacementOptions, "room">;

export interface Placing {
  readonly runs: ReadonlyMap<string, RoomRun>;
  readonly running: boolean;
  readonly start: (site: Site, rooms: readonly string[], options: RunOptions) => void;
  /** Stops; rooms that were being placed keep their best so far. */
  readonly stop: () => void;
  /** Forgets what was found. */
  readonly clear: () => void;
}

const unlessWaiting = (run: RoomRun): RoomRun => (run.state === "waiting" ? { state: "left" } : run);

/** Rooms placed at the same time: each takes a worker, and one core is left for the screen. */
const atOnce = (): number => Math.max(1, Math.min(4, (navigator.hardwareConcurrency || 2) - 1));

/** Places one room after another, a few at a time; whatever is done is kept when the rest is stopped. */
export function usePlacing({ place }: Pick<Calculations, "place">): Placing {
  const [runs, setRuns] = useState<ReadonlyMap<string, RoomRun>>(new Map());
  const [running, setRunning] = useState(false);
  const control = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => control.current?.abort(), []);
  const start = useCallback(
    (site: Site, rooms: readonly string[], options: RunOptions) => {
      control.current?.abort();
      const own = new AbortController();
      control.current = own;
      const say = (room: string, run: RoomRun) => {
        if (control.current === own) setRuns((known) => new Map(known).set(room, run));
      };
      setRuns(new Map(rooms.map((room) => [room, { state: "waiting" }])));
      setRunning(true);
      const queue = [...rooms];
      const worker = async (): Promise<void> => {
        for (let room = queue.shift(); room !== undefined && !own.signal.aborted; room = queue.shift()) {
          const id = room;
          say(id, { state: "running", step: undefined });
          try {
            const result = await place(
              site,
              { room: id, ...options },
              { progress: (step) => say(id, { state: "running", step }), signal: own.signal },
            );
            say(id, { state: "done", result });
          } catch (trouble) {
            say(id, {
              state: "failed",
              message: trouble instanceof Error ? trouble.message : String(trouble),
            });
          }
        }
      };
      void Promise.all(Array.from({ length: Math.min(atOnce(), rooms.length) }, worker)).then(() => {
        if (control.current !== own) return;
        setRunning(false);
        setRuns((known) => new Map([...known].map(([room, run]) => [room, unlessWaiting(run)])));
      });
    },
    [place],
  );
  const stop = useCallback(() => control.current?.abort(), []);
  const clear = useCallback(() => {
    control.current?.abort();
    control.current = undefined;
    setRuns(new Map());
    setRunning(false);
  }, []);
  return { runs, running, start, stop, clear };
}
