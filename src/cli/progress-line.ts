import type { World } from "./command.ts";

/** One line that is written over while work goes on, where somebody watches; silence in a pipe. */
export function progressLine(world: World): {
  readonly show: (text: string) => void;
  readonly clear: () => void;
} {
  let width = 0;
  const write = (text: string): void => {
    if (!world.watched) return;
    world.note(`\r${text.padEnd(width)}`);
    width = text.length;
  };
  return {
    show: write,
    clear: () => {
      if (!world.watched || width === 0) return;
      world.note(`\r${" ".repeat(width)}\r`);
      width = 0;
    },
  };
}
