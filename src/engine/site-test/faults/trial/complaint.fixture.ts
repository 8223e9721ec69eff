import type { Symptom } from "../names.ts";
import { type Built, type Senses, sensesOf } from "./built.fixture.ts";
import { drawsOf } from "./draws.fixture.ts";
import { type Life, live, type Script, type Stretch } from "./live.fixture.ts";
import { ownDetectors } from "./plan.fixture.ts";

/** A room as built with its senses at hand; what is drawn for it does not hang on what else was asked. */
export interface Trial {
  readonly built: Built;
  readonly senses: Senses;
  readonly seed: number;
}

/** The trial of a room as built. */
export const trialOf = (built: Built, seed: number): Trial => ({ built, senses: sensesOf(built.site), seed });

/** Lives a script in a trial. */
export const lived = ({ built, senses, seed }: Trial, script: Script, name: string): Life =>
  live(built, senses, script, drawsOf(seed, name));

/** An ordinary day: one long stay, an empty stretch, a shorter stay, an empty stretch. */
export function ordinaryDay(trial: Trial, changes: Partial<Script> = {}, place?: number): Script {
  const { built, seed } = trial;
  const draw = drawsOf(seed, "passers");
  const passers: number[] = [];
  for (let at = 300; at < DAY; at += 500 + 500 * draw()) passers.push(Math.round(at));
  const places = built.site.dwellPlaces.length;
  return {
    stays: [
      { from: 1200, to: 6600, what: { place: place ?? 0 } },
      { from: 13_200, to: 15_600, what: { place: place ?? 1 % places } },
    ],
    until: DAY,
    door: built.door,
    passers: passers.filter((at) => Math.abs(at - 1200) > 30 && Math.abs(at - 13_200) > 30),
    machines: true,
    byDay: true,
    ...changes,
  };
}

const DAY = 22_800;

/** The longest delay that was planned for the room. [s] */
export const plannedDelay = (built: Built): number =>
  Math.max(...ownDetectors(built.plan.site).map(({ id }) => built.plan.settings[id]!.offDelay));

/** Seconds from coming in to light beyond which people call it late. */
const LATE_FROM = 3.2;

/** What people would complain of after a stretch of life, the most telling complaint first; undefined: nothing. */
export function complaintOf(built: Built, script: Script, life: Life): Symptom | undefined {
  const { lit } = life;
  if (life.unsteady || flickers(lit)) return "flickers";
  const stays = script.stays.filter(({ what }) => what !== "beneath");
  const waits = stays.map(({ from, to }) => waitOf(lit, [from, to]));
  if (stays.length > 0 && waits.every((wait) => wait === undefined)) return "does-not-come-on";
  if (waits.some((wait) => wait !== undefined && wait > LATE_FROM && wait < 600)) return "comes-on-late";
  const [came] = stays.filter((_, i) => waits[i] !== undefined && waits[i] < 600);
  if (came && darkWithin(lit, [came.from + LATE_FROM, came.to])) return "goes-off-while-occupied";
  if (waits.some((wait) => wait === undefined || wait >= 600)) return "does-not-come-on";
  if (stays.some(({ from, to }) => darkWithin(lit, [from + LATE_FROM, to]))) return "goes-off-while-occupied";
  const late = emptyLight(built, script, lit);
  if (late !== undefined) return late;
  return life.glows ? "glows-when-off" : undefined;
}

/** Four times off and on again within a minute, in five minutes. */
function flickers(lit: readonly Stretch[]): boolean {
  const gaps = lit.slice(1).flatMap(([on], i) => (on - lit[i]![1] < 60 && on - lit[i]![1] > 5 ? [on] : []));
  return gaps.some((at, i) => i + 3 < gaps.length && gaps[i + 3]! - at < 300);
}

/** Seconds in the dark after coming in; undefined: no light at all. */
function waitOf(lit: readonly Stretch[], [from, to]: Stretch): number | undefined {
  const first = lit.find(([on, off]) => off > from && on < to);
  return first && Math.max(0, first[0] - from);
}

function darkWithin(lit: readonly Stretch[], [from, to]: Stretch): boolean {
  const first = lit.find(([, off]) => off > from);
  return (
    first === undefined ||
    lit.some(([, off], i) => off > from && off < to && (lit[i + 1]?.[0] ?? Infinity) > off + 5)
  );
}

/** Light in empty stretches: the whole of it, longer than the delay explains, or again. */
function emptyLight(built: Built, script: Script, lit: readonly Stretch[]): Symptom | undefined {
  const delay = plannedDelay(built);
  const edges = [0, ...script.stays.flatMap(({ from, to }) => [from, to]), script.until];
  let again = false;
  let held = false;
  for (let i = 0; i < edges.length; i += 2) {
    const from = i === 0 ? 0 : edges[i]! + delay + 60;
    const to = edges[i + 1]! - 2;
    if (to <= from) continue;
    const within = lit.flatMap(([on, off]): Stretch[] =>
      off > from && on < to ? [[Math.max(on, from), Math.min(off, to)]] : [],
    );
    const sum = within.reduce((total, [on, off]) => total + off - on, 0);
    if (sum < 1) continue;
    if (within[0]![0] === from && i > 0 && (sum > 0.85 * (to - from) || within[0]![1] - from > 0.5 * delay))
      held = true;
    else again = true;
  }
  return held ? "stays-on" : again ? "comes-on-with-nobody-there" : undefined;
}
