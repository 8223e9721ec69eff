import type { World } from "./command.ts";
import { placeHere } from "./place-here.ts";
import { run } from "./run.ts";

/** Runs a command line in a folder, as nobody watches it, and tells what came of it: exit code, standard output, notes. */
export async function runHere(folder: string, words: readonly string[], more: Partial<World> = {}) {
  let [out, notes, ids] = ["", "", 0];
  const exit = await run(words, {
    folder,
    print: (text) => {
      out += text;
    },
    note: (text) => {
      notes += text;
    },
    watched: false,
    cancelled: new AbortController().signal,
    placeRooms: placeHere,
    newId: () => `id-${++ids}`,
    ...more,
  });
  return { exit, out, notes, json: () => JSON.parse(out) };
}
