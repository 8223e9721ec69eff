import type { ChanceTable } from "../knowledge-types.ts";

/** Outcomes of tests by cause, in the order of their names. Counted in 40 simulated rooms a cause by scripts/count-fault-chances.ts, one more added to every outcome; in percent. Causes that are not named differ from the usual by no more than 8 percent, or showed themselves in fewer than 4 rooms in which this is asked. @source FAULT-TRIALS */
export const measurements = {
  "look-to-the-lens": {
    usual: [91, 4, 5],
    given: {
      "output-joined-with-another": [75, 13, 13],
      "hidden-behind-something": [21, 74, 5],
      "mask-in-the-way": [16, 5, 79],
    },
  },
  "measure-height": { usual: [93, 7], given: { "hung-at-another-height": [7, 93] } },
  "measure-temperature": {
    usual: [95, 5],
    given: { "output-joined-with-another": [57, 43], "room-too-warm": [10, 90] },
  },
  "measure-open-output": {
    usual: [85, 7, 5],
    given: {
      "source-in-view": [95, 2, 2],
      "contact-welded": [2, 95, 2],
      "switch-in-parallel": [5, 91, 5],
      "glow-lamp-holds-button": [59, 32, 9],
      "suppressor-leaks": [2, 5, 93],
      "long-cores-couple": [2, 5, 93],
      "glow-lamp-feeds-lamps": [2, 2, 95],
    },
  },
  "measure-closed-output": {
    usual: [90, 10],
    given: { "room-too-warm": [43, 57], "detector-without-supply": [10, 90], "contact-stays-open": [5, 95] },
  },
  "unplug-output": {
    usual: [90, 5, 5],
    given: {
      "switch-in-parallel": [5, 93, 2],
      "output-joined-with-another": [3, 92, 5],
      "long-cores-couple": [2, 5, 93],
      "glow-lamp-feeds-lamps": [2, 5, 93],
    },
  },
  "measure-supply": {
    usual: [93, 5, 5],
    given: { "detector-without-supply": [5, 86, 9], "supply-interrupted": [7, 5, 88] },
  },
  "feed-lamps-directly": {
    usual: [79, 6, 5, 5],
    given: {
      "sensitivity-too-low": [50, 13, 25, 13],
      "hung-at-another-height": [56, 11, 11, 22],
      "bright-enough-for-the-sensor": [91, 2, 2, 5],
      "lamps-dazzle-the-sensor": [91, 2, 2, 5],
      "semi-automatic": [89, 5, 2, 5],
      "detector-without-supply": [89, 5, 5, 2],
      "contact-stays-open": [93, 2, 2, 2],
      "lamps-without-line": [2, 7, 5, 86],
      "lamps-start-late": [2, 93, 2, 2],
      "door-beyond-reach": [91, 2, 2, 5],
      "test-mode-left-on": [91, 2, 5, 2],
      "driver-unsteady": [7, 2, 89, 2],
    },
  },
  "look-at-breakers": {
    usual: [95, 5],
    given: { "output-joined-with-another": [86, 14], "neutral-borrowed": [12, 88] },
  },
  "disconnect-button": {
    usual: [10, 90],
    given: {
      "source-in-view": [19, 81],
      "glow-lamp-holds-button": [95, 5],
      "button-of-another-room": [98, 2],
      "hidden-behind-something": [25, 75],
      "sensitivity-too-low": [21, 79],
      "room-too-warm": [36, 64],
    },
  },
  "cover-neighbours": { usual: [5, 95], given: { "output-joined-with-another": [97, 3] } },
  "silence-microphone": {
    usual: [5, 95],
    given: { "noise-heard": [95, 5], "button-of-another-room": [16, 84] },
  },
  "look-for-suppressor": {
    usual: [19, 2, 74],
    given: { "suppressor-leaks": [93, 2, 5], "glow-lamp-feeds-lamps": [15, 2, 83] },
  },
  "take-out-glow-lamp": {
    usual: [5, 16, 77],
    given: {
      "source-in-view": [5, 5, 91],
      "switch-in-parallel": [2, 12, 86],
      "glow-lamp-holds-button": [58, 2, 40],
      "place-beyond-reach": [3, 11, 86],
      "mask-in-the-way": [7, 27, 67],
      "supply-interrupted": [2, 12, 86],
      "glow-lamp-feeds-lamps": [93, 5, 2],
      "surge-starts-it-again": [5, 26, 70],
    },
  },
  "test-neutral": {
    usual: [95, 5],
    given: { "output-joined-with-another": [86, 14], "neutral-borrowed": [14, 86] },
  },
  "log-switching": {
    usual: [17, 88],
    given: {
      "source-in-view": [5, 95],
      "passer-by-seen": [64, 36],
      "noise-heard": [7, 93],
      "delay-too-long": [7, 93],
      "delay-too-short": [95, 5],
      "contact-welded": [5, 95],
      "output-joined-with-another": [71, 29],
      "glow-lamp-holds-button": [40, 60],
      "place-beyond-reach": [6, 94],
      "mask-in-the-way": [21, 79],
      "sensitivity-too-low": [3, 97],
      "room-too-warm": [7, 93],
      "hung-at-another-height": [22, 78],
      "lamps-dazzle-the-sensor": [95, 5],
      "supply-interrupted": [98, 2],
      "neutral-borrowed": [7, 93],
      "surge-starts-it-again": [95, 5],
      "test-mode-left-on": [93, 7],
    },
  },
} as const satisfies Readonly<Record<string, ChanceTable>>;
