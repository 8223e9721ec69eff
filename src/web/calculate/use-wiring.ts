import { useEffect } from "react";
import type { Store, Workbench } from "../shell/workbench.ts";
import type { Calculator } from "./calculator.ts";
import { followWiring } from "./follow-wiring.ts";

/** Keeps what is known of the wiring on the workbench. Outside its stage it waits until the plan itself is calculated. */
export function useWiring(
  { store, calculator }: { readonly store: Store<Workbench>; readonly calculator: Calculator },
  onTrouble: (sentence: string) => void,
): void {
  useEffect(() => {
    const follower = followWiring((heard) => {
      if ("known" in heard) store.set({ wiring: heard.known });
      else onTrouble(heard.sentence);
    });
    const follow = (): void => {
      const { job, stage } = store.get();
      const { busy, revision } = calculator.current();
      if (stage === "wire" || (!busy && revision > 0)) follower.follow(job);
    };
    const ends = [store.subscribe(follow), calculator.subscribe(follow)];
    follow();
    return () => {
      for (const end of ends) end();
      follower.stop();
    };
  }, [store, calculator, onTrouble]);
}
