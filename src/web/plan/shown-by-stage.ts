import type { Stage, Workbench } from "../shell/workbench.ts";
import type { Shown } from "./paint/zones.ts";

type Layer = keyof Shown;

const all: readonly Layer[] = ["seated", "towards", "across", "sound", "gaps", "spill", "darkWalks"];

/** What of the calculated may lie on the plan: the wiring has it to itself, settings need no more of it than who sees where. */
export const layersOf: Readonly<Record<Stage, readonly Layer[]>> = {
  survey: all,
  place: all,
  wire: [],
  set: ["seated", "towards", "across", "sound"],
  test: ["towards", "seated"],
  "hand-over": all,
};

/** What is shown in the stage that one is in. The same object while nothing of it changed. */
export function shownByStage(): (bench: Pick<Workbench, "stage" | "shown">) => Shown {
  let known: { readonly of: Shown; readonly stage: Stage; readonly shown: Shown } | undefined;
  return ({ stage, shown }) => {
    if (known?.of !== shown || known.stage !== stage) {
      const layers = layersOf[stage];
      const own = Object.fromEntries(
        Object.entries(shown).map(([layer, on]) => [layer, on && layers.includes(layer as Layer)]),
      ) as unknown as Shown;
      known = { of: shown, stage, shown: layers === all ? shown : own };
    }
    return known.shown;
  };
}
