import type { ControlEvent } from "./arrangement.ts";
import type { ControlParameters } from "./parameters.ts";
import { type ControlState, causes } from "./states.ts";

/** One second of a controller, counted down by hand: shares no code with the automaton, whole seconds only. */
interface Clockwork {
  state: ControlState;
  out: boolean;
  warm: number;
  quiet: number;
  delay: number;
  grace: number;
  dark: number;
  bright: number;
  test: number;
  pulse: number;
  day: number;
}

export interface TableRow {
  readonly at: number;
  readonly state: ControlState;
  readonly out: boolean;
}

/** Reads the table of the state machine second by second, for one controller whose lamps do not reach its sensor. */
export function byTheTable(p: ControlParameters, events: readonly ControlEvent[], until: number): TableRow[] {
  const k: Clockwork = {
    state: "idle",
    out: false,
    warm: -1,
    quiet: -1,
    delay: -1,
    grace: -1,
    dark: -1,
    bright: -1,
    test: -1,
    pulse: -1,
    day: 0,
  };
  const rows: TableRow[] = [{ at: 0, state: "idle", out: false }];
  const note = (at: number): void => {
    const last = rows.at(-1)!;
    if (last.state !== k.state || last.out !== k.out) rows.push({ at, state: k.state, out: k.out });
  };
  const isDark = (): boolean => p.threshold === undefined || k.day < p.threshold;
  const isBright = (): boolean => p.threshold !== undefined && k.day > p.threshold * (1 + p.hysteresis);
  const go = (state: ControlState, out: boolean): void => {
    k.state = state;
    k.out = out;
  };
  const on = (): void => {
    go("occupied", true);
    k.quiet = p.movementHold;
    k.delay = p.offDelay;
  };
  const happen = (event: ControlEvent): void => {
    if (event.kind === "daylight") k.day = event.value;
    else if (event.kind === "power-off") go("without-power", false);
    else if (event.kind === "power-on") {
      if (k.state !== "without-power") return;
      go("warming-up", p.litWhileWarmingUp);
      k.warm = p.warmUp;
    } else if (k.state === "without-power") return;
    else if (event.kind === "test-on") {
      go("test", false);
      k.test = p.testTime;
      k.pulse = -1;
    } else if (event.kind === "test-off") {
      if (k.state === "test") go("idle", false);
    } else if (k.state === "warming-up") return;
    else if (k.state === "test") {
      if (event.kind === "movement") {
        k.out = true;
        k.pulse = p.testPulse;
      }
    } else if (event.kind === "button") {
      if (k.state === "occupied" || k.state === "delay") {
        if (p.button === "on-only") on();
        else go("manual-off", false);
      } else if (k.state === "armed") {
        if (!p.buttonNeedsDark || isDark()) on();
      } else if (k.state === "idle" || k.state === "manual-off") on();
      else if (p.buttonAlwaysAnswers && (k.state === "held" || k.state === "grace")) on();
    } else if (event.kind === "sound") {
      if (p.sound && (k.state === "occupied" || k.state === "delay" || k.state === "grace")) on();
    } else if (k.state === "idle") {
      if (p.mode === "semi-automatic") go("armed", false);
      else if (isDark()) on();
      else go("held", false);
      k.delay = p.offDelay;
    } else if (k.state === "occupied" || k.state === "delay" || k.state === "grace") on();
    else k.delay = p.offDelay;
  };
  const runOut = (): void => {
    if (k.state === "warming-up" && k.warm === 0) go("idle", false);
    if (k.state === "test") {
      if (k.test === 0) go("idle", false);
      else if (k.pulse === 0) k.out = false;
    }
    if (k.state === "occupied" && k.quiet === 0) go("delay", true);
    if ((k.state === "occupied" || k.state === "delay") && k.bright === 0) go("held", false);
    if (k.state === "delay" && k.delay === 0) {
      go(p.sound ? "grace" : "idle", false);
      k.grace = p.sound?.grace ?? -1;
    } else if (["armed", "held", "manual-off"].includes(k.state) && k.delay === 0) go("idle", false);
    else if (k.state === "held" && k.dark === 0) {
      go("occupied", true);
      k.quiet = p.movementHold;
    } else if (k.state === "grace" && k.grace === 0) go("idle", false);
  };
  /** Starts the two filters where their condition has just begun, stops them where it ended. */
  const light = (): void => {
    const held = k.state === "held" && p.mode === "automatic" && isDark();
    k.dark = !held ? -1 : k.dark < 0 ? p.darkFilter : k.dark;
    const lit = k.state === "occupied" || k.state === "delay";
    const bright = lit && p.mode === "automatic" && p.brightFilter !== undefined && isBright();
    k.bright = !bright ? -1 : k.bright < 0 ? p.brightFilter! : k.bright;
  };
  const order = (e: ControlEvent): number => causes.indexOf(e.kind);
  for (let at = 0; at <= until; at++) {
    if (at > 0)
      for (const t of ["warm", "quiet", "delay", "grace", "dark", "bright", "test", "pulse"] as const)
        k[t] -= k[t] > 0 ? 1 : 0;
    for (const event of events
      .filter((e) => e.at === at)
      .sort((a, b) => order(a) - order(b) || ("value" in a && "value" in b ? a.value - b.value : 0))) {
      happen(event);
      light();
      note(at);
    }
    for (let i = 0; i < 3; i++) {
      runOut();
      light();
      note(at);
    }
  }
  return rows;
}
