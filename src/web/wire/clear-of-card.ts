import { useEffect } from "react";
import { toPixel } from "../plan/view.ts";
import { type Actions, storeyBounds } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";

/** Width of the card and the room beside it, where it floats beside the plan. [px] */
const beside = 432;

/** Draws the storey smaller where all of it was in view and the card, which is wider here, would cover its end. */
export function useClearOfCard(store: Store<Workbench>, actions: Actions): void {
  useEffect(() => {
    const { job, storey, view } = store.get();
    if (view.width <= 1000) return;
    const bounds = storeyBounds(job, storey);
    const [from, to] = [
      toPixel(view, [bounds.left, bounds.top]),
      toPixel(view, [bounds.right, bounds.bottom]),
    ];
    const whole = from.px >= -1 && from.py >= -1 && to.px <= view.width + 1 && to.py <= view.height + 1;
    if (whole && to.px > view.width - beside + 24) actions.showAll();
  }, [store, actions]);
}
