import { type RefObject, useEffect } from "react";
import { placeOf } from "../plan/pick.ts";
import { toPixel } from "../plan/view.ts";
import type { Actions } from "./actions.ts";
import { sheetMedia } from "./card.tsx";
import type { Store, Workbench } from "./workbench.ts";

/** The sheet has come to rest by then. [ms] */
const afterMotion = 160;
/** A thing nearer to the sheet than this is not seen well. [px] */
const nearSheet = 60;
/** Height of the bar above the plan. [px] */
const topBar = 52;

/** On a small screen the sheet covers the lower part of the plan: what it speaks of is moved into the free part. */
export function useClearOfSheet(of: {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly card: RefObject<HTMLElement | null>;
  readonly about: string;
}): void {
  const { store, actions, card, about } = of;
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks again only when the sheet speaks of something else
  useEffect(() => {
    const look = setTimeout(() => {
      const { job, selection, view, tool, toolState } = store.get();
      const place = selection[0] && placeOf(job.site, selection[0]);
      // While one draws, the plan keeps still under the hand.
      if (tool.kind === "add") return;
      if (!place || !card.current || toolState.on !== "rest" || !matchMedia(sheetMedia).matches) return;
      const edge = card.current.getBoundingClientRect().top;
      const { py } = toPixel(view, place);
      if (py > edge - nearSheet) actions.pan(0, (topBar + edge) / 2 - py);
    }, afterMotion);
    return () => clearTimeout(look);
  }, [about, store, actions, card]);
}
