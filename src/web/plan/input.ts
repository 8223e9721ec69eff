import type { Calculator } from "../calculate/calculator.ts";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { benchOf, flagAt } from "./reading.ts";
import type { Input } from "./tools/state.ts";
import { gripsOf, previewOf, stepped } from "./tools/step.ts";

/** Takes what a person did on the plan, by pointer, key or typed figure, to the tools, and what comes of it to the job and the screen. */
export function inputOn(ports: {
  readonly store: Store<Workbench>;
  readonly calculator: Calculator;
  readonly actions: Actions;
}): (input: Input) => void {
  const { store, calculator, actions } = ports;
  let lastPreview: ReturnType<typeof previewOf> = [];
  return (what) => {
    const bench = store.get();
    if (what.do === "down") {
      const flag = flagAt(bench, calculator.current().findings, what.pixel);
      if (flag !== undefined && bench.tool.kind === "select") {
        store.set({ panel: { kind: "findings" } });
        actions.showFinding(flag, calculator.current().findings);
        return;
      }
    }
    const own = benchOf(bench);
    const deed = stepped(bench.toolState, what, { ...own, grips: gripsOf(own) });
    if (deed.state === bench.toolState && what.do === "hover") return;
    const change: { -readonly [K in keyof Workbench]?: Workbench[K] } = { toolState: deed.state };
    if (deed.view) change.view = deed.view;
    if (deed.select) {
      change.selection = deed.select;
      if (what.do === "up" || deed.commit) change.panel = { kind: "thing" };
    }
    if (deed.tool) change.tool = deed.tool;
    if (deed.commit) {
      bench.job.edit(deed.commit.name, deed.commit.steps);
      lastPreview = [];
    }
    store.set(change);
    const preview = deed.commit ? [] : previewOf(deed.state, store.get().job.site);
    if (preview.some(({ kind }) => kind === "detectors") || (lastPreview.length > 0 && !deed.commit))
      calculator.live(preview);
    lastPreview = preview;
  };
}
