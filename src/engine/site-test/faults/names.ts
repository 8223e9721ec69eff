/** What people complain of. */
export const symptoms = [
  "stays-on",
  "goes-off-while-occupied",
  "comes-on-with-nobody-there",
  "does-not-come-on",
  "comes-on-late",
  "flickers",
  "glows-when-off",
] as const;

export type Symptom = (typeof symptoms)[number];

/** What can be behind a complaint. Permanent names. */
export const faultCauses = [
  "source-in-view",
  "passer-by-seen",
  "noise-heard",
  "delay-too-long",
  "delay-too-short",
  "contact-welded",
  "switch-in-parallel",
  "output-joined-with-another",
  "glow-lamp-holds-button",
  "button-of-another-room",
  "place-beyond-reach",
  "hidden-behind-something",
  "mask-in-the-way",
  "sensitivity-too-low",
  "room-too-warm",
  "hung-at-another-height",
  "bright-enough-for-the-sensor",
  "lamps-dazzle-the-sensor",
  "semi-automatic",
  "detector-without-supply",
  "contact-stays-open",
  "lamps-without-line",
  "supply-interrupted",
  "lamps-start-late",
  "door-beyond-reach",
  "suppressor-leaks",
  "long-cores-couple",
  "glow-lamp-feeds-lamps",
  "neutral-borrowed",
  "surge-starts-it-again",
  "test-mode-left-on",
  "driver-unsteady",
] as const;

export type FaultCause = (typeof faultCauses)[number];

/** What can be asked, looked at, tried or measured, and what may come out. Permanent names. */
export const faultTests = {
  "ask-hours": ["by-day-only", "after-dark-too"],
  "ask-place": ["at-one-place", "everywhere"],
  "ask-machines": ["only-while-they-run", "without-them-too"],
  "ask-door": ["only-with-the-door-open", "shut-too"],
  "ask-neighbours": ["only-when-they-are-about", "without-them-too"],
  "ask-rhythm": ["at-once", "sooner-than-set", "after-the-set-time", "after-longer", "never"],
  "read-settings": ["as-planned", "delay", "light", "mode", "sensitivity", "test-mode"],
  "empty-room": ["goes-off", "stays-lit", "comes-on-again"],
  "cover-lenses": ["goes-off", "stays-lit", "comes-on-again"],
  "walk-past-open-door": ["comes-on", "stays-off"],
  "walk-in": ["at-once", "late", "not-at-all"],
  "walk-beneath": ["indicator-and-light", "indicator-only", "light-only", "neither"],
  "press-button": ["answers", "does-not", "no-button"],
  "shade-light-sensor": ["stops", "goes-on"],
  "sit-at-the-place": ["noticed", "not-noticed"],
  "sit-near": ["noticed", "not-noticed"],
  "look-to-the-lens": ["in-plain-sight", "something-between", "masked"],
  "measure-height": ["as-planned", "another"],
  "measure-temperature": ["ordinary", "warm"],
  "measure-open-output": ["dead", "live", "floating"],
  "measure-closed-output": ["live", "dead"],
  "unplug-output": ["dark", "lit", "glows"],
  "measure-supply": ["steady", "absent", "comes-and-goes"],
  "feed-lamps-directly": ["lit-at-once", "lit-late", "unsteady", "dark"],
  "look-at-breakers": ["all-on", "residual-current-tripped"],
  "disconnect-button": ["stops", "goes-on"],
  "cover-neighbours": ["stops", "goes-on"],
  "silence-microphone": ["stops", "goes-on"],
  "look-for-suppressor": ["across-the-contact", "across-the-load", "none"],
  "take-out-glow-lamp": ["stops", "goes-on", "none-there"],
  "test-neutral": ["own", "shared"],
  "log-switching": ["detector-switches", "detector-is-steady"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type FaultTest = keyof typeof faultTests;

/** TestOutcome of a test by its name. */
export type TestOutcome<Test extends FaultTest = FaultTest> = (typeof faultTests)[Test][number];

export const faultTestNames = /* @__PURE__ */ Object.keys(faultTests) as readonly FaultTest[];
