import type { Point } from "#engine";

/** What a key on the plan means. */
export type KeyDeed =
  | { readonly do: "move"; readonly by: Point; readonly pixels: Point }
  | { readonly do: "turn"; readonly by: number }
  | { readonly do: "zoom"; readonly factor: number }
  | { readonly do: "walk" | "flag"; readonly way: 1 | -1 }
  | {
      readonly do:
        | "fit"
        | "remove"
        | "duplicate"
        | "select-all"
        | "undo"
        | "redo"
        | "let-go"
        | "measure"
        | "set-down"
        | "card";
    };

export interface KeyPress {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const quarterOfSix = Math.PI / 12;

/** Arrows move 10 cm; with Alt 1 cm, with Shift 50 cm. */
export function keyDeed(press: KeyPress): KeyDeed | undefined {
  const command = press.ctrlKey || press.metaKey;
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  if (command) {
    if (key === "z") return { do: press.shiftKey ? "redo" : "undo" };
    if (key === "y") return { do: "redo" };
    if (key === "a") return { do: "select-all" };
    // Copy, cut and paste come from the browser as events of their own.
    return key === "d" ? { do: "duplicate" } : undefined;
  }
  const arrow = arrows[key];
  if (arrow) {
    const step = press.altKey ? 0.01 : press.shiftKey ? 0.5 : 0.1;
    return { do: "move", by: [arrow[0] * step, arrow[1] * step], pixels: [-arrow[0] * 60, arrow[1] * 60] };
  }
  if (press.altKey) return undefined;
  switch (key) {
    case "r":
      return { do: "turn", by: press.shiftKey ? -quarterOfSix : quarterOfSix };
    case "n":
      return { do: "walk", way: 1 };
    case "p":
      return { do: "walk", way: -1 };
    case "f":
      return { do: "flag", way: press.shiftKey ? -1 : 1 };
    case "+":
    case "=":
      return { do: "zoom", factor: 1.25 };
    case "-":
      return { do: "zoom", factor: 0.8 };
    case "0":
      return { do: "fit" };
    case "d":
      return { do: "duplicate" };
    case "m":
      return { do: "measure" };
    case "Delete":
    case "Backspace":
      return { do: "remove" };
    case "Escape":
      return { do: "let-go" };
    case "Enter":
      return { do: "set-down" };
    case "c":
      return { do: "card" };
    default:
      return undefined;
  }
}
