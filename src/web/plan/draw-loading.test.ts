import { expect, test } from "vitest";
import { type Store, storeOf, type Workbench } from "../shell/workbench.ts";
import { earlyInput, loadDrawing } from "./draw-loading.ts";
import type { Input, Tool } from "./tools/state.ts";

const tool: Tool = { kind: "add", what: "room" };
const pixel = { px: 10, py: 20 };
const down: Input = { do: "down", pixel, shift: false, pan: false, touch: false };
const up: Input = { do: "up", pixel };

const begun = () => {
  const store = storeOf({ tool, toolState: { on: "rest" }, drawing: undefined } as unknown as Workbench);
  const taken: Input[] = [];
  return { store, taken, early: earlyInput(store, (one) => taken.push(one)) };
};
/** Loaded, and a turn of the event loop for those who waited for it. */
async function loaded(store: Store<Workbench>): Promise<void> {
  await loadDrawing(store);
  expect(store.get().drawing).toBeDefined();
  await new Promise((next) => setTimeout(next, 0));
}

test("what a quick hand does before drawing is loaded is done afterwards, in its order", {
  timeout: 60_000,
}, async () => {
  const { store, taken, early } = begun();
  expect([down, up].map(early)).toEqual([true, true]);
  expect(taken).toEqual([]);
  await loaded(store);
  expect(taken).toEqual([down, up]);
  expect(early(down)).toBe(false);
});

test("panning, hovering and putting the tool away do not wait", () => {
  const { early } = begun();
  const free: Input[] = [{ ...down, pan: true }, { do: "hover", pixel, free: false }, { do: "cancel" }];
  expect(free.map(early)).toEqual([false, false, false]);
});

test("nothing is drawn with a tool that was put away meanwhile", { timeout: 60_000 }, async () => {
  const { store, taken, early } = begun();
  early(down);
  store.set({ tool: { kind: "select" } });
  await loaded(store);
  expect(taken).toEqual([]);
});
