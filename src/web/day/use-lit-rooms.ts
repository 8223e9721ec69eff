import { useEffect } from "react";
import type { Store, Workbench } from "../shell/workbench.ts";

/** The plan shows quietly which rooms are lit at the time on show. */
export function useLitRooms({
  store,
  rooms,
  lit,
}: {
  readonly store: Store<Workbench>;
  readonly rooms: readonly string[];
  readonly lit: boolean;
}): void {
  useEffect(() => {
    store.set({ lit: lit ? rooms : undefined });
  }, [store, rooms, lit]);
  useEffect(() => () => store.set({ lit: undefined }), [store]);
}
