#!/usr/bin/env node
import { randomUUID } from "node:crypto";
import { availableParallelism } from "node:os";
import type { World } from "./command.ts";
import { placeHere } from "./place-here.ts";
import { placeInWorkers } from "./place-in-workers.ts";
import { run } from "./run.ts";

/** Two rooms at a time: each holds a solver's memory, and laptops on site are small. */
const threads = Math.min(2, availableParallelism());
/** Threads need the built worker beside this file; run from source, rooms are placed in this thread. */
const built = import.meta.url.endsWith(".mjs");

const cancel = new AbortController();
process.on("SIGINT", () => {
  // A second stroke means now.
  if (cancel.signal.aborted) process.exit(130);
  cancel.abort();
});
// A reader that goes away, as in a pipe to head, is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

const world: World = {
  folder: process.cwd(),
  print: (text) => process.stdout.write(text),
  note: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY === true,
  cancelled: cancel.signal,
  placeRooms: built ? placeInWorkers(threads, new URL("./place-worker.mjs", import.meta.url)) : placeHere,
  newId: () => randomUUID(),
};

// exitCode rather than exit: what was printed into a pipe is written out first.
process.exitCode = await run(process.argv.slice(2), world);
