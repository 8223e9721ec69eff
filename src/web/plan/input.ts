import type { Calculator } from "../calculate/calculator.ts";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { benchOf, flagAt } from "./reading.ts";
import type { Input } from "./tools/state.ts";
import { gripsOf, previewOf, stepped } from "./tools/step.ts";
import { boundsOf, fitted, type Insets, toPixel } from "./view.ts";

/** Takes what a person did on the plan, by pointer, key or typed figure, to the tools, and what comes of it to the job and the screen. */
export function inputOn(ports: {
  readonly store: Store<Workbench>;
  readonly calculator: Calculator;
  readonly actions: Actions;
  readonly insets: () => Insets;
}): (input: Input) => void {
  const { store, calculator, actions, insets } = ports;
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
      // Should the job not have changed, then nothing of the drag stays on show.
      calculator.live([]);
      lastPreview = [];
    }
    store.set(change);
    if (what.do === "typed") keepInView(store, insets());
    const preview = deed.commit ? [] : previewOf(deed.state, store.get().job.site);
    if (preview.some(({ kind }) => kind === "detectors") || (lastPreview.length > 0 && !deed.commit))
      calculator.live(preview);
    lastPreview = preview;
  };
}

/** What was typed may lead out of sight: then the plan is drawn smaller, so that all of it shows. */
function keepInView(store: Store<Workbench>, edges: Insets): void {
  const { toolState, view, selection, job } = store.get();
  const made = selection.length === 1 && selection[0]?.kind === "rooms" ? selection[0].id : undefined;
  const points =
    toolState.on === "chain"
      ? toolState.points
      : (job.site.rooms.find(({ id }) => id === made)?.outline ?? []);
  const seen = points.every((point) => {
    const { px, py } = toPixel(view, point);
    return (
      px > edges.left + 24 &&
      px < view.width - edges.right - 24 &&
      py > edges.top + 24 &&
      py < view.height - edges.bottom - 24
    );
  });
  const bounds = boundsOf(points);
  if (seen || !bounds) return;
  const margin = 0.15 * Math.max(bounds.right - bounds.left, bounds.top - bounds.bottom, 1);
  store.set({
    view: fitted(
      view,
      {
        left: bounds.left - margin,
        right: bounds.right + margin,
        bottom: bounds.bottom - margin,
        top: bounds.top + margin,
      },
      edges,
    ),
  });
}
