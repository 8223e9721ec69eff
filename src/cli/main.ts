#!/usr/bin/env node
import { randomUUID } from "node:crypto";
import { availableParallelism } from "node:os";
import { exitCodes, type World } from "./command.ts";
import { placeHere } from "./place-here.ts";
import { placeInWorkers } from "./place-in-workers.ts";
import { run } from "./run.ts";

/** Two rooms at a time: each holds a solver's memory, and laptops on site are small. */
const threads = Math.min(2, availableParallelism());
/** Threads need the built worker beside this file; run from source, rooms are placed in this thread. */
const built = import.meta.url.endsWith(".mjs");
/** One stroke of Ctrl+C may arrive twice, from the terminal and from npm: so near each other they are one. [ms] */
const sameStroke = 500;

const cancel = new AbortController();
let stroke = Number.NEGATIVE_INFINITY;
for (const signal of ["SIGINT", "SIGTERM"] as const)
  process.on(signal, () => {
    const now = performance.now();
    // A second stroke means now.
    if (cancel.signal.aborted && now - stroke > sameStroke) process.exit(exitCodes.cancelled);
    stroke = now;
    cancel.abort();
  });

let unsaid = false;
for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error: NodeJS.ErrnoException) => {
    // A reader that goes away, as in a pipe to head, is no fault, and the work goes on to its end.
    if (error.code === "EPIPE") return;
    unsaid = true;
    process.exitCode = exitCodes.internal;
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

const exit = await run(process.argv.slice(2), world);
// exitCode rather than exit: what was printed into a pipe is written out first.
if (!unsaid) process.exitCode = exit;
