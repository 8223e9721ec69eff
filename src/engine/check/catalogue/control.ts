import type { CatalogueEntry } from "./entry.ts";

/** What shows only over time. */
export const controlProblems = {
  "switched-off-while-occupied": {
    severity: "must",
    message: "{load} goes off at {at} while somebody is there, and stays dark for {dark}.",
    remedy: "Lengthen the off delay, add a detector that sees who sits still, or fit one with sound.",
  },
  "lit-while-empty": {
    severity: "should",
    message:
      "{load} stays lit for {long} from {from} on with nobody there, beyond the {allowed} that its delay explains.",
    remedy:
      "Find what triggers it: spill from another room, a heat source, or another controller that holds it.",
  },
  "light-hunts": {
    severity: "must",
    message: "{load} goes off by brightness and on again {times} times running from {at} on.",
    remedy: "Raise the threshold for off, or use a controller that takes off what its own lamps add.",
  },
  "never-off": {
    severity: "should",
    message: "{load} stays lit for {hours} h without a break from {at} on.",
    remedy: "Look at who holds it, at the delay, and at what moves in view of the detector.",
  },
  "delay-recommended": {
    severity: "note",
    message:
      "{minutes} min is the shortest delay that leaves people in the dark {off} times a day and switches {cycles} times a year; it spares {percent} %.",
    remedy: "Take it, or choose a longer one where people complain.",
  },
  "no-delay-fits": {
    severity: "should",
    message:
      "No delay up to {longest} min keeps to {most} switch-offs a day while somebody is there and {cycles} cycles a year.",
    remedy: "See people who sit still better: place a detector nearer, or fit one with sound.",
  },
} as const satisfies Record<string, CatalogueEntry>;
