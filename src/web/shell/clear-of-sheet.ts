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
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks again only when the sheet speaks of something else, or grows
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = (): void => {
      const { job, selection, view, tool, toolState } = store.get();
      const place = selection[0] && placeOf(job.site, selection[0]);
      // While one draws, the plan keeps still under the hand.
      if (tool.kind === "add") return;
      if (!place || !card.current || toolState.on !== "rest" || !matchMedia(sheetMedia).matches) return;
      const edge = card.current.getBoundingClientRect().top;
      // A sheet drawn up all the way leaves no part free.
      if (edge < topBar + 2 * nearSheet) return;
      const { py } = toPixel(view, place);
      if (py > edge - nearSheet) actions.pan(0, (topBar + edge) / 2 - py);
    };
    const soon = (): void => {
      clearTimeout(timer);
      timer = setTimeout(look, afterMotion);
    };
    soon();
    // A sheet that is drawn up, or grows for a field that is typed into, covers more.
    let height = card.current?.offsetHeight ?? 0;
    const watch = new ResizeObserver(() => {
      const now = card.current?.offsetHeight ?? 0;
      if (now > height) soon();
      height = now;
    });
    if (card.current) watch.observe(card.current);
    return () => {
      clearTimeout(timer);
      watch.disconnect();
    };
  }, [about, store, actions, card]);
}
