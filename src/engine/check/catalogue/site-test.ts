import type { CatalogueEntry } from "./entry.ts";

/** Steps out of order, power refused, and readings that need a second look. */
export const siteTestProblems = {
  "step-out-of-order": {
    severity: "must",
    message: "The step {step} of {about} comes too early: {missing} steps before it are not done.",
    remedy: "Do the earlier steps first, or say why they do not apply.",
  },
  "step-needs-dead": {
    severity: "must",
    message: "The step {step} of {about} is dead work, and the installation is not proved dead.",
    remedy: "Disconnect, lock off and prove dead first.",
  },
  "step-needs-power": {
    severity: "must",
    message: "This is done with the power on, and the circuits are dead.",
    remedy: "Put the power back on first, as its own step.",
  },
  "power-refused-link": {
    severity: "must",
    message: "No power: the test link at detector {tag} is not ticked as removed.",
    remedy: "Take the link out and tick it, or say that none was put in.",
  },
  "power-refused-test": {
    severity: "must",
    message: "No power: the step {step} of {about} is missing.",
    remedy: "Do it, and enter the result.",
  },
  "power-refused-failed": {
    severity: "must",
    message: "No power: the step {step} of {about} has failed.",
    remedy: "Mend the fault, then test again from the first test that it may have touched.",
  },
  "reading-impossible": {
    severity: "must",
    message: "A reading of {value} {unit} cannot be.",
    remedy: "Read again, and look at the sign and the point.",
  },
  "reading-unusual": {
    severity: "should",
    message: "{value} {unit} is unusual; readings lie between {least} and {most} {unit}.",
    remedy: "Look at the range of the instrument and the unit; keep the reading if it is right.",
  },
  "reading-outside-instrument": {
    severity: "should",
    message: "{value} {unit} lies outside the range of the instrument, {least} to {most} {unit}.",
    remedy: "Choose another range or instrument; keep the reading if it is right.",
  },
} as const satisfies Record<string, CatalogueEntry>;
