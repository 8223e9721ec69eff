import {
  type DetectorModel,
  type Feed,
  say,
  type TerminalKind,
  type WiredDetector,
  type Words,
} from "#engine";
import type { ConductorKind } from "./conductors.ts";
import type { GroupPlan, Terminal } from "./plan.ts";

const terminalLabels: Readonly<Record<TerminalKind, Words>> = {
  "line-in": "L",
  neutral: "N",
  "switched-line": "L′",
  "protective-conductor": "PE",
  "push-button": say`button`,
  "extension-in": say`signal in`,
  "extension-out": say`signal out`,
  "control-plus": say`control +`,
  "control-minus": say`control −`,
};

const order = Object.keys(terminalLabels) as readonly TerminalKind[];

/** What the group asks of a detector beside its own supply. */
export interface TerminalNeeds {
  readonly buttons: "some" | "none";
  /** Whether slaves signal to others in the group. */
  readonly slaves: "some" | "none";
  /** Whether the group's level is set by a pair of conductors. */
  readonly control: GroupPlan["control"];
}

/**
 * Terminals of a detector: those that its data sheet lists and those that the group needs, each with its conductor.
 *
 * A terminal that is needed and not listed stays on paper with "no": the detector cannot do what is planned.
 */
export function terminalsOf(
  wired: WiredDetector,
  model: DetectorModel | undefined,
  needs: TerminalNeeds,
): readonly Terminal[] {
  const listed = model?.terminals;
  return order.flatMap((kind): readonly Terminal[] => {
    const conductor = conductorOn(kind, wired, needs);
    const declared = listed === undefined ? "unknown" : listed.includes(kind) ? "yes" : "no";
    // A protective conductor is brought to the box; a detector without a terminal for it is no fault.
    if (conductor === "none" && declared !== "yes") return [];
    if (kind === "protective-conductor" && declared === "no") return [];
    const label = (wired.lowVoltage && lowLabels[kind]) ?? terminalLabels[kind];
    return [{ kind, label, conductor, declared }];
  });
}

/** What the terminals of a low-voltage detector are called. */
const lowLabels: Readonly<Partial<Record<TerminalKind, Words>>> = {
  "line-in": "+",
  neutral: "−",
  "switched-line": say`signal`,
};

function conductorOn(kind: TerminalKind, wired: WiredDetector, needs: TerminalNeeds): ConductorKind | "none" {
  if (wired.lowVoltage) {
    if (kind === "line-in") return "low-plus";
    if (kind === "neutral") return "low-minus";
    if (kind === "switched-line") return wired.output === undefined ? "none" : "low-signal";
    if (kind === "protective-conductor") return "none";
  }
  switch (kind) {
    case "line-in":
      return conductorOf(wired.line);
    case "neutral":
      return conductorOf(wired.neutral);
    case "switched-line":
      return wired.output === undefined ? "none" : "switched";
    case "protective-conductor":
      return wired.protectiveConductor === "no" ? "none" : "protective";
    case "push-button":
      return needs.buttons === "some" ? "button" : "none";
    case "extension-in":
      return needs.slaves === "some" && wired.role !== "slave" ? "signal" : "none";
    case "extension-out":
      return wired.role === "slave" ? "signal" : "none";
    case "control-plus":
    case "control-minus":
      return needs.control === "pair" && wired.output !== undefined ? kind : "none";
  }
}

/** The conductor behind a feed. */
export function conductorOf(feed: Feed): ConductorKind | "none" {
  switch (feed.kind) {
    case "line":
      return feed.line;
    case "switched-line":
      return "switched";
    case "neutral":
      return "neutral";
    case "none":
      return "none";
    case "unknown":
      return "unknown";
  }
}
