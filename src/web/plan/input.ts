import type { Calculator } from "../calculate/calculator.ts";
import { roomAsker } from "../calculate/room-at.ts";
import type { Actions } from "../shell/actions.ts";
import { findingsHere, type Store, type Workbench } from "../shell/workbench.ts";
import { takeRoomSteps } from "../survey/drawings/take-room.ts";
import { earlyInput } from "./draw-loading.ts";
import { fieldsWith } from "./held-pin.ts";
import { benchOf, flagAt } from "./reading.ts";
import type { Input } from "./tools/state.ts";
import { rest } from "./tools/state.ts";
import { gripsOf, previewOf, stepped } from "./tools/step.ts";
import { boundsOf, fitted, type Insets, type Pixel, toPixel, toPoint } from "./view.ts";
import { wireTouch } from "./wire-touch.ts";

/** Where no room of the storey says otherwise. Common practice, no source. [m] */
const usualCeiling = 2.5;

/** Takes what a person did on the plan, by pointer, key or typed figure, to the tools, and what comes of it to the job and the screen. */
export function inputOn(ports: {
  readonly store: Store<Workbench>;
  readonly calculator: Calculator;
  readonly actions: Actions;
  readonly insets: () => Insets;
}): (input: Input) => void {
  const { store, calculator, actions, insets } = ports;
  let lastPreview: ReturnType<typeof previewOf> = [];
  const ask = roomAsker();
  const takeDrawn = async (pixel: Pixel): Promise<void> => {
    const { job, storey, view } = store.get();
    const here = job.site.storeys.find(({ id }) => id === storey);
    if (!here || job.readOnly) return;
    const ceiling = job.site.rooms.findLast((room) => room.storey === storey)?.ceilingHeight ?? usualCeiling;
    const drawings = job.kept.underlays.filter((one) => one.shown && one.storey === storey);
    store.set({ toolState: rest });
    const found = await ask(drawings, { point: toPoint(view, pixel), of: { storey: here, ceiling } });
    const { job: now, tool } = store.get();
    if (!found) {
      store.set({ toolState: { on: "rest", refused: "lines" } });
      return;
    }
    if (!now.site.rooms.some(({ id }) => id === found.room.id))
      now.edit("plan.edit.add", takeRoomSteps(now.site, found));
    store.set({
      selection: [{ kind: "rooms", id: found.room.id }],
      panel: { kind: "thing" },
      ...(tool.kind === "add" && tool.after !== "again" ? { tool: { kind: "select" } as const } : {}),
    });
  };
  const take = (what: Input): void => {
    const bench = store.get();
    if (bench.pointing) {
      if (what.do === "up") {
        store.set({ pointing: undefined, toolState: rest });
        bench.pointing.take(toPoint(bench.view, what.pixel), bench.storey);
      }
      return;
    }
    if (touchWire(what)) return;
    if (bench.tool.kind === "add" && bench.tool.what === "drawnRoom" && bench.toolState.on === "rest") {
      // One touch asks the drawing for the room round it; dragging with the middle button still moves the plan.
      if (what.do === "up") void takeDrawn(what.pixel);
      if (what.do !== "down" || !what.pan) return;
    }
    if (keptForLater(what)) return;
    if (what.do === "down") {
      const findings = findingsHere(bench, calculator.current());
      const flag = flagAt(bench, findings, what.pixel);
      if (flag !== undefined && bench.tool.kind === "select") {
        store.set({ panel: { kind: "findings" } });
        actions.showFinding(flag, findings);
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
    if (deed.side) {
      change.side = deed.side;
      change.panel = { kind: "thing" };
    } else if (deed.select) change.side = undefined;
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
  const touchWire = wireTouch({
    bench: store.get,
    open: (circuit) => store.set({ circuit, selection: [], panel: { kind: "thing" } }),
    show: (pin) => store.set({ pin }),
    keep: (pin) => {
      const { job } = store.get();
      const own = job.kept.circuits.find(({ id }) => id === pin.circuit);
      if (own)
        job.keep("wire.edit.route", [
          { do: "set", kind: "circuits", id: own.id, fields: fieldsWith(own, pin) },
        ]);
    },
    pass: (what) => take(what),
  });
  const keptForLater = earlyInput(store, take);
  return take;
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
