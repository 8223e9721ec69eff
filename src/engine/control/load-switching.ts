import type { Seconds } from "../quantity/index.ts";
import type { ControlLoad } from "./arrangement.ts";
import { C } from "./states.ts";
import type { LoadTrack } from "./track.ts";

const NEVER = Number.POSITIVE_INFINITY;

/** A load while it runs: closed contacts, stair timer, and what has been switched so far. */
export interface RunningLoad {
  readonly load: ControlLoad;
  closed: number;
  timerAt: Seconds;
  lit: boolean;
  readonly on: Seconds[];
  readonly off: Seconds[];
  readonly onCauses: number[];
  readonly offCauses: number[];
  readonly offBy: number[];
}

/** A load that is off. */
export const runningLoad = (load: ControlLoad): RunningLoad => ({
  load,
  closed: 0,
  timerAt: NEVER,
  lit: false,
  on: [],
  off: [],
  onCauses: [],
  offCauses: [],
  offBy: [],
});

/**
 * Lights or darkens a load as its contacts and its timer say.
 *
 * @param running - The load
 * @param now - [s]
 * @param by - Cause, and the controller that changed
 * @returns Whether it changed
 */
export function settleLoad(
  running: RunningLoad,
  now: Seconds,
  by: { readonly cause: number; readonly device: number },
): boolean {
  const lit = running.closed > 0 || running.timerAt < NEVER;
  if (lit === running.lit) return false;
  running.lit = lit;
  if (lit) {
    // Off and on at one instant is no switching: two contacts, or a cause that follows at once, hand the load on.
    if (running.off.length > 0 && running.off.at(-1) === now) {
      running.off.pop();
      running.offCauses.pop();
      running.offBy.pop();
    } else {
      running.on.push(now);
      running.onCauses.push(by.cause);
    }
  } else if (running.on.at(-1) === now) {
    running.on.pop();
    running.onCauses.pop();
  } else {
    running.off.push(now);
    running.offCauses.push(by.cause);
    running.offBy.push(by.device);
  }
  return true;
}

/** A pulse on a stair timer. A pulse while it runs starts it anew where it is retriggerable. @param running - The load @param now - [s] */
export function pulseTimer(running: RunningLoad, now: Seconds): void {
  const timer = running.load.stairTimer!;
  if (running.timerAt === NEVER || timer.retriggerable) running.timerAt = now + timer.time;
}

/** Columns of a load; what is still lit ends with the simulation. @param running - The load @param until - [s] */
export function closedLoad(running: RunningLoad, until: Seconds): LoadTrack {
  const stillLit = running.on.length > running.off.length;
  return {
    length: running.on.length,
    on: Float64Array.from(running.on),
    off: Float64Array.from(stillLit ? [...running.off, until] : running.off),
    onCauses: Uint8Array.from(running.onCauses),
    offCauses: Uint8Array.from(stillLit ? [...running.offCauses, C.start] : running.offCauses),
    offBy: Int32Array.from(stillLit ? [...running.offBy, -1] : running.offBy),
  };
}
