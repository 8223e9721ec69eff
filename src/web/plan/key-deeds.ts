import type { Finding } from "#engine";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import type { KeyDeed } from "./keys.ts";
import type { Input } from "./tools/state.ts";

interface KeyPorts {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly findings: () => readonly Finding[];
  readonly input: (input: Input) => void;
  readonly onCard: () => void;
}

/** Does what a key means: with a thing selected to the thing, else to the view. */
export function doKey(deed: KeyDeed, { store, actions, findings, input, onCard }: KeyPorts): void {
  const { job, selection } = store.get();
  switch (deed.do) {
    case "move":
      if (selection.length > 0) actions.nudge(deed.by);
      else actions.pan(deed.pixels[0], deed.pixels[1]);
      break;
    case "turn":
      actions.turn(deed.by);
      break;
    case "zoom":
      actions.zoom(deed.factor);
      break;
    case "walk":
      actions.walk(deed.way);
      break;
    case "flag":
      nextFlag(deed.way, { store, actions, findings: findings() });
      break;
    case "fit":
      actions.showAll();
      break;
    case "remove":
      actions.remove();
      break;
    case "duplicate":
      actions.duplicate();
      break;
    case "select-all":
      actions.selectAll();
      break;
    case "undo":
      job.undo();
      break;
    case "redo":
      job.redo();
      break;
    case "let-go":
      actions.letGo();
      break;
    case "measure":
      actions.take({ kind: "measure" });
      break;
    case "card":
      onCard();
      break;
    case "set-down": {
      // With the keyboard a new thing is set down in the middle of what one sees.
      const { tool, view } = store.get();
      if (tool.kind !== "add") {
        onCard();
        break;
      }
      const pixel = { px: view.width / 2, py: view.height / 2 };
      input({ do: "down", pixel, shift: false, pan: false, touch: false });
      input({ do: "up", pixel });
    }
  }
}

function nextFlag(
  way: 1 | -1,
  {
    store,
    actions,
    findings,
  }: { readonly store: Store<Workbench>; readonly actions: Actions; readonly findings: readonly Finding[] },
): void {
  if (findings.length === 0) return;
  const at = store.get().finding ?? (way === 1 ? -1 : 0);
  store.set({ panel: { kind: "findings" } });
  actions.showFinding((at + way + findings.length) % findings.length, findings);
}
