import type { RecordInputs } from "../schema/job-file.ts";

type Sheet = RecordInputs["models"];
type Contact = NonNullable<Sheet["contact"]>;

/** What the wiring asks of a data sheet. */
type ModelWiring = Pick<
  Sheet,
  | "fixing"
  | "depth"
  | "ceilingThickness"
  | "cableEntry"
  | "entrySeal"
  | "indicators"
  | "waterProtection"
  | "contact"
  | "outputKinds"
  | "terminals"
  | "inputs"
  | "warmUpOutput"
  | "standby"
  | "leakage"
>;

/** Relays for rooms, for long rows, and for halls: from a small contact to one that closes where the voltage crosses zero. */
const small: Contact = {
  kind: "relay",
  rated: { resistive: 10, incandescent: 6, fluorescent: 3, led: 2, inductive: 1 },
  makingPeak: 165,
  makingWidth: 0.0002,
  drivers: 12,
  life: 100_000,
  backUp: 16,
  joined: 4,
};
const medium: Contact = {
  ...small,
  rated: { resistive: 10, incandescent: 8, fluorescent: 5, led: 4, inductive: 2 },
  makingPeak: 300,
  drivers: 20,
};
const large: Contact = {
  ...small,
  rated: { resistive: 16, incandescent: 10, fluorescent: 8, led: 6, inductive: 3 },
  makingPeak: 600,
  makingWidth: 0.0005,
  drivers: 35,
  life: 50_000,
  zeroCross: true,
};

const terminals: NonNullable<Sheet["terminals"]> = [
  "line-in",
  "neutral",
  "protective-conductor",
  "switched-line",
  "push-button",
];

/** Through a panel of the ceiling. */
const recessed = { fixing: "ceiling-panel", ceilingThickness: { min: 0.005, max: 0.025 } } as const;

/** Signs of the invented models. */
const indicators: NonNullable<Sheet["indicators"]> = [
  { sign: "red, on for 2 s", meaning: "it sees somebody, in test mode" },
  { sign: "red, blinks once a second", meaning: "warm-up after its supply came" },
  { sign: "red, dark", meaning: "in use: it shows nothing" },
];

const ready = {
  outputKinds: ["switch"],
  cableEntry: "either",
  entrySeal: "grommet",
  indicators,
  terminals,
  inputs: { pushButton: "line", holdOff: 0.002, extension: false },
  warmUpOutput: "on",
  standby: 0.4,
  leakage: 0.0001,
} as const satisfies ModelWiring;

const extended = {
  ...ready,
  outputKinds: ["switch", "two-level"],
  terminals: [...terminals, "extension-in", "extension-out", "control-plus", "control-minus"],
  inputs: { ...ready.inputs, extension: true },
} as const satisfies ModelWiring;

/** Electrical data of the demo's models by their id, as invented as the models are. */
export const demoModelWiring: Readonly<Record<string, ModelWiring>> = {
  "demo-round-6": { ...ready, ...recessed, depth: 0.05, waterProtection: 4, contact: small },
  "demo-round-8": { ...ready, ...recessed, depth: 0.06, waterProtection: 4, contact: small },
  "demo-round-8-sound": { ...ready, ...recessed, depth: 0.07, waterProtection: 0, contact: small },
  "demo-round-10-desk": { ...extended, ...recessed, depth: 0.075, waterProtection: 0, contact: medium },
  "demo-round-12": { ...extended, ...recessed, depth: 0.07, waterProtection: 4, contact: medium },
  "demo-round-12-sound": { ...extended, ...recessed, depth: 0.075, waterProtection: 0, contact: medium },
  "demo-square-7": { ...ready, fixing: "surface", depth: 0.045, waterProtection: 4, contact: small },
  // Off while it warms up: a corridor full of drivers does not close on its breaker when power returns.
  "demo-corridor-20": {
    ...extended,
    ...recessed,
    depth: 0.07,
    waterProtection: 0,
    warmUpOutput: "off",
    contact: small,
  },
  "demo-high-16": { ...extended, fixing: "surface", depth: 0.06, waterProtection: 4, contact: large },
  "demo-high-24": { ...extended, fixing: "box", depth: 0.06, waterProtection: 4, contact: large },
};
