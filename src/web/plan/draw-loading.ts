import type { Store, Workbench } from "../shell/workbench.ts";
import type { Input } from "./tools/state.ts";

/** What one needs only while one draws, loaded with the first tool that is taken for it; where that fails, the next touch tries again. */
export async function loadDrawing(store: Store<Workbench>): Promise<void> {
  if (store.get().drawing) return;
  const { drawingTools } = await import("./tools/drawing-tools.ts");
  store.set({ drawing: drawingTools });
}

/** Whether something that was done has to wait until drawing is loaded. Panning and putting the tool away do not. */
const waits = ({ tool, toolState, drawing }: Workbench, what: Input): boolean =>
  tool.kind === "add" &&
  !drawing &&
  toolState.on !== "pan" &&
  what.do !== "hover" &&
  what.do !== "cancel" &&
  !(what.do === "down" && what.pan);

/**
 * Keeps what a quick hand did before drawing was loaded, and does it then, in its order.
 *
 * @returns Whether it was kept.
 */
export function earlyInput(store: Store<Workbench>, take: (input: Input) => void): (what: Input) => boolean {
  let early: Input[] = [];
  const taken = (tool: Workbench["tool"]): void => {
    const kept = early;
    early = [];
    // Whoever has put the tool away meanwhile does not draw with it any more.
    if (store.get().tool === tool && store.get().drawing) for (const one of kept) take(one);
  };
  return (what) => {
    const bench = store.get();
    if (!waits(bench, what)) return false;
    early.push(what);
    if (early.length === 1)
      loadDrawing(store).then(
        () => taken(bench.tool),
        () => taken(bench.tool),
      );
    return true;
  };
}
