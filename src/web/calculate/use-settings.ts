import { useEffect } from "react";
import type { Store, Workbench } from "../shell/workbench.ts";
import type { Calculator } from "./calculator.ts";
import { followSettings } from "./follow-settings.ts";

/** Keeps what is known of the settings on the workbench. Outside their stage they wait until the plan itself is calculated. */
export function useSettings(
  { store, calculator }: { readonly store: Store<Workbench>; readonly calculator: Calculator },
  onTrouble: (sentence: string) => void,
): void {
  useEffect(() => {
    const follower = followSettings((heard) => {
      if ("known" in heard) store.set({ settings: heard.known });
      else onTrouble(heard.sentence);
    });
    const follow = (): void => {
      const { job, stage } = store.get();
      const { busy, revision } = calculator.current();
      if (stage === "set" || (!busy && revision > 0)) follower.follow(job);
    };
    const ends = [store.subscribe(follow), calculator.subscribe(follow)];
    follow();
    return () => {
      for (const end of ends) end();
      follower.stop();
    };
  }, [store, calculator, onTrouble]);
}
