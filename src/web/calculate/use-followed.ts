import { useEffect, useState } from "react";
import type { Store, Workbench } from "../shell/workbench.ts";
import type { Calculator } from "./calculator.ts";
import type { Heard } from "./follow.ts";
import { followSettings } from "./follow-settings.ts";
import { followWiring } from "./follow-wiring.ts";
import { isTrouble } from "./line.ts";

/**
 * Keeps what is known of wiring and settings on the workbench. Outside their stages they wait until the plan itself is calculated,
 * and of the wiring only what the line of stages counts is calculated.
 *
 * @returns A sentence, where one of them could not be calculated.
 */
export function useFollowed({
  store,
  calculator,
}: {
  readonly store: Store<Workbench>;
  readonly calculator: Calculator;
}): string | undefined {
  const [troubles, setTroubles] = useState<{ readonly [Part in "wiring" | "settings"]?: string | undefined }>(
    {},
  );
  useEffect(() => {
    const keep =
      <Part extends "wiring" | "settings">(part: Part) =>
      (heard: Heard<NonNullable<Workbench[Part]>>): void => {
        const trouble = isTrouble(heard) ? heard.sentence : undefined;
        setTroubles((before) => (before[part] === trouble ? before : { ...before, [part]: trouble }));
        if (!isTrouble(heard)) store.set({ [part]: heard.known });
      };
    const wiring = followWiring(keep("wiring"));
    const settings = followSettings(keep("settings"));
    const look = (): void => {
      const { job, stage } = store.get();
      const { busy, revision, trouble } = calculator.current();
      const calm = !busy && (revision >= 0 || trouble !== undefined);
      if (calm || stage === "wire") wiring.follow(job, stage === "wire");
      if (calm || stage === "set") settings.follow(job, true);
    };
    let due = false;
    let ended = false;
    // A change is looked at once this turn is over: by then the plan is being calculated, if it must be.
    const follow = (): void => {
      if (due) return;
      due = true;
      queueMicrotask(() => {
        due = false;
        if (!ended) look();
      });
    };
    const ends = [store.subscribe(follow), calculator.subscribe(follow)];
    follow();
    return () => {
      ended = true;
      for (const end of [...ends, wiring.stop, settings.stop]) end();
    };
  }, [store, calculator]);
  return troubles.wiring ?? troubles.settings;
}
