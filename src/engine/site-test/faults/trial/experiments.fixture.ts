import { prepareRoom, unseenReason } from "../../../coverage/index.ts";
import { deviceOf } from "../../../coverage/watchers.ts";
import { distanceBetween, type Point } from "../../../geometry/index.ts";
import { type FaultTest, faultTests, type Symptom, type TestOutcome } from "../names.ts";
import type { Built } from "./built.fixture.ts";
import { complaintOf, lived, ordinaryDay, plannedDelay, type Trial } from "./complaint.fixture.ts";
import { drawsOf } from "./draws.fixture.ts";
import type { Script } from "./live.fixture.ts";
import { ownDetectors, ROOM } from "./plan.fixture.ts";

/** How often somebody reads a result wrongly. A choice of this trial. */
export const MISREAD = 0.04;

/** What comes out of a test in a room as built, misread now and then. */
export function outcomeOf<Test extends FaultTest>(
  trial: Trial,
  symptom: Symptom,
  test: Test,
): TestOutcome<Test> {
  const draw = drawsOf(trial.seed, `misread ${test}`);
  const true_ = truth(trial, symptom)[test]() as TestOutcome<Test>;
  if (draw() >= MISREAD) return true_;
  const others = (faultTests[test] as readonly TestOutcome<Test>[]).filter((one) => one !== true_);
  return others[Math.floor(draw() * others.length)]!;
}

type Experiments = { readonly [Test in FaultTest]: () => TestOutcome<Test> };

/** Every test as something that is done in the room. */
function truth(trial: Trial, symptom: Symptom): Experiments {
  const { built } = trial;
  const delay = plannedDelay(built);
  const day = (changes: Partial<Script>, name: string, place?: number): Symptom | undefined => {
    const script = ordinaryDay(trial, changes, place);
    return complaintOf(built, script, lived(trial, script, name));
  };
  /** Whether the complaint goes away when something is changed. */
  const stops = (changes: Partial<Script>): "stops" | "goes-on" =>
    day(changes, "day") === symptom ? "goes-on" : "stops";
  const quiet: Script = {
    stays: [],
    until: 2 * delay + 1500,
    door: "shut",
    passers: [],
    machines: true,
    byDay: true,
  };
  /** Somebody walks beneath for ten seconds, then nobody is there. */
  const emptied = (changes: Partial<Script>): "goes-off" | "stays-lit" | "comes-on-again" => {
    const script: Script = {
      ...quiet,
      stays: [{ from: 60, to: 70, what: "beneath" }],
      passers: [200, 700, 1300],
      ...changes,
    };
    const { lit } = lived(trial, script, "empty");
    const after = 70 + delay + 60;
    const late = lit.filter(([, off]) => off > after);
    if (late.length === 0) return "goes-off";
    return late.some(([on]) => on <= after) ? "stays-lit" : "comes-on-again";
  };
  const beneath = (changes: Partial<Script> = {}) => {
    const script: Script = {
      ...quiet,
      until: 75,
      stays: [{ from: 60, to: 75, what: "beneath" }],
      machines: false,
      ...changes,
    };
    return { script, life: lived(trial, script, "beneath") };
  };
  const still = (at: Point): "noticed" | "not-noticed" =>
    built.supply !== "absent" && trial.senses.still(at, built.site.defaults.sightHeights.desk).length > 0
      ? "noticed"
      : "not-noticed";
  return {
    "ask-hours": () => (day({ byDay: false }, "day") === symptom ? "after-dark-too" : "by-day-only"),
    "ask-place": () =>
      built.site.dwellPlaces.every((_, i) => day({}, "day", i) === symptom) ? "everywhere" : "at-one-place",
    "ask-machines": () =>
      stops({ machines: false, microphoneOff: true }) === "stops"
        ? "only-while-they-run"
        : "without-them-too",
    "ask-door": () => (stops({ door: "shut" }) === "stops" ? "only-with-the-door-open" : "shut-too"),
    "ask-neighbours": () =>
      stops({ passers: [] }) === "stops" ? "only-when-they-are-about" : "without-them-too",
    "ask-rhythm": () => rhythm(trial, symptom),
    "read-settings": () => settingsRead(built),
    "empty-room": () => emptied({}),
    "cover-lenses": () => emptied({ lensesCovered: true, stays: [], presses: [] }),
    "walk-past-open-door": () => {
      const script: Script = {
        ...quiet,
        until: 400,
        door: "open",
        passers: [300],
        machines: false,
        byDay: false,
      };
      return lived(trial, script, "past").lit.some(([on, off]) => on >= 298 && on <= 330 && off > 300)
        ? "comes-on"
        : "stays-off";
    },
    "walk-in": () => {
      const script: Script = {
        ...quiet,
        until: 1000,
        stays: [{ from: 600, to: 900, what: { place: 0 } }],
        machines: false,
      };
      const on = lived(trial, script, "walk in").lit.find(([from, off]) => off > 600 && from < 900)?.[0];
      return on === undefined || on > 640 ? "not-at-all" : on - 600 > 3.2 ? "late" : "at-once";
    },
    "walk-beneath": () => {
      const { life } = beneath();
      const blinks = life.noticed.some((at) => at >= 60);
      const lit = life.lit.some(([on, off]) => off > 66 && on < 75);
      return blinks ? (lit ? "indicator-and-light" : "indicator-only") : lit ? "light-only" : "neither";
    },
    "press-button": () => {
      if (!built.plan.site.switches.some(({ planned }) => planned === "button")) return "no-button";
      const litWith = (presses: readonly number[]) =>
        lived(trial, { ...quiet, until: 120, machines: false, presses }, "press").lit.some(
          ([on, off]) => on <= 100 && off > 100,
        );
      return litWith([80]) !== litWith([]) ? "answers" : "does-not";
    },
    "shade-light-sensor": () => stops({ sensorShaded: true }),
    "sit-at-the-place": () => {
      const seen = built.site.dwellPlaces.map(({ at }) => still(at));
      return seen.includes("not-noticed") ? "not-noticed" : "noticed";
    },
    "sit-near": () => {
      const { at } = ownDetectors(built.site)[0]!;
      const toward = built.site.dwellPlaces[0]!.at;
      const away = Math.max(0.1, distanceBetween(at, toward));
      return still([at[0] + (toward[0] - at[0]) / away, at[1] + (toward[1] - at[1]) / away]);
    },
    "look-to-the-lens": () => lookToLens(built),
    "measure-height": () =>
      ownDetectors(built.site).every(
        (one, i) => Math.abs(one.height - ownDetectors(built.plan.site)[i]!.height) < 0.15,
      )
        ? "as-planned"
        : "another",
    "measure-temperature": () => ((built.site.rooms[0]!.highestTemperature ?? 22) > 29 ? "warm" : "ordinary"),
    "measure-open-output": () => {
      const script: Script = { ...quiet, lensesCovered: true, microphoneOff: true };
      const { called } = lived(trial, script, "open");
      const held = called.some(([on, off]) => on < script.until - 1 && off >= script.until - 1);
      if (held || built.contact === "welded" || built.parallelSwitch) return "live";
      return built.leak === "none" ? "dead" : "floating";
    },
    "measure-closed-output": () => {
      const { life } = beneath({ byDay: false, presses: isSemi(built) ? [62] : [] });
      const called = life.called.some(([on, off]) => off > 68 && on < 75);
      return built.parallelSwitch || built.contact === "welded" || (called && built.contact === "works")
        ? "live"
        : "dead";
    },
    "unplug-output": () => {
      const { life } = beneath({ outputUnplugged: true, passers: [10, 40, 70] });
      if (life.lit.length > 0) return "lit";
      return life.glows ? "glows" : "dark";
    },
    "measure-supply": () => built.supply,
    "feed-lamps-directly": () =>
      (({ good: "lit-at-once", late: "lit-late", unsteady: "unsteady", dead: "dark" }) as const)[built.lamps],
    "look-at-breakers": () => {
      const script = ordinaryDay(trial);
      return lived(trial, script, "day").tripped ? "residual-current-tripped" : "all-on";
    },
    "disconnect-button": () => stops({ buttonOff: true }),
    "cover-neighbours": () => stops({ neighboursCovered: true }),
    "silence-microphone": () => stops({ microphoneOff: true }),
    "look-for-suppressor": () => {
      const planned = ownDetectors(built.site).flatMap(({ suppressors = [] }) => suppressors)[0];
      if (built.leak === "suppressor") return "across-the-contact";
      return planned ? (planned.across === "contact" ? "across-the-contact" : "across-the-load") : "none";
    },
    "take-out-glow-lamp": () => {
      const there = built.leak === "glow-lamp" || built.plan.site.switches.some(({ glowLamp }) => glowLamp);
      if (!there) return "none-there";
      return stops({ glowLampOut: true, ...(built.glowPresses ? { buttonOff: true } : {}) });
    },
    "test-neutral": () => built.neutral,
    "log-switching": () => {
      const { called } = lived(trial, ordinaryDay(trial), "day");
      return called.slice(1).some(([on], i) => on - called[i]![1] < 60)
        ? "detector-switches"
        : "detector-is-steady";
    },
  };
}

const isSemi = ({ parameters }: Built): boolean => parameters.d1!.mode === "semi-automatic";

/** When it goes off, or comes on again, as people tell it. */
function rhythm(trial: Trial, symptom: Symptom): TestOutcome<"ask-rhythm"> {
  const { built } = trial;
  const delay = plannedDelay(built);
  const script = ordinaryDay(trial);
  const { lit } = lived(trial, script, "day");
  const tell = (seconds: number): TestOutcome<"ask-rhythm"> =>
    seconds < 100
      ? "at-once"
      : seconds < 0.8 * delay
        ? "sooner-than-set"
        : seconds < 1.3 * delay + 60
          ? "after-the-set-time"
          : "after-longer";
  if (symptom === "goes-off-while-occupied") {
    const [stay] = script.stays;
    const off = lit.find(([, to]) => to > stay!.from + 4 && to < stay!.to)?.[1];
    return off === undefined ? "never" : tell(off - stay!.from);
  }
  if (symptom === "stays-on") {
    const left = script.stays[0]!.to;
    const off = lit.find(([on, to]) => on <= left + 1 && to > left)?.[1];
    return off === undefined || off >= script.stays[1]!.from ? "never" : tell(off - left);
  }
  if (symptom === "comes-on-with-nobody-there") {
    const left = script.stays[0]!.to;
    const off = lit.find(([on, to]) => on <= left + 1 && to > left)?.[1];
    const again = lit.find(([on]) => off !== undefined && on > off)?.[0];
    return off === undefined || again === undefined ? "never" : tell(again - off);
  }
  return "never";
}

/** What an instrument or a remote reads, held against what was planned. */
function settingsRead(built: Built): TestOutcome<"read-settings"> {
  for (const { id } of ownDetectors(built.site)) {
    const [real, planned] = [built.parameters[id]!, built.plan.settings[id]!];
    if (real.testTime > 3600) return "test-mode";
    if (real.mode !== planned.mode) return "mode";
    if (real.offDelay !== planned.offDelay) return "delay";
    if ((real.threshold ?? "off") !== planned.threshold || real.compensation === "none") return "light";
    if (built.plan.settings[id]!.sensitivity !== "low" && built.lowSensitivity) return "sensitivity";
  }
  return "as-planned";
}

/** From the worst place: in plain sight of the nearest lens, or what is between. */
function lookToLens(built: Built): TestOutcome<"look-to-the-lens"> {
  const site = {
    ...built.site,
    models: built.site.models.map((model) => ({
      ...model,
      zones: { towards: [{ height: 0.5, radius: 60 }], seated: [{ height: 0.5, radius: 60 }] },
    })),
    rooms: built.site.rooms.map(({ highestTemperature: _, ...room }) => room),
  };
  const prepared = prepareRoom(site, ROOM);
  const devices = ownDetectors(site).map((one) => deviceOf(one, site.models[0]!));
  const answers = site.dwellPlaces.map(({ at }) => {
    const reasons = devices.map((device) =>
      unseenReason(prepared.closed(), { device, kind: "seated", point: at }),
    );
    if (reasons.includes(undefined)) return "in-plain-sight" as const;
    return reasons.some((reason) => reason?.kind === "hidden")
      ? ("something-between" as const)
      : ("masked" as const);
  });
  return answers.find((answer) => answer !== "in-plain-sight") ?? "in-plain-sight";
}
