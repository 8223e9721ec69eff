import { joined, say, type Words } from "#engine";
import { type ConductorKind, colourWords, markings } from "./conductors.ts";
import type { Designations } from "./designations.ts";
import { brokenBy, switchedFor } from "./load-columns.ts";
import type { GroupPlan } from "./plan.ts";

/** Rows of the terminal schedule for the contactors of a group: coils that it holds, main contacts that feed it. */
export function contactorRows(group: GroupPlan, names: Designations): readonly (readonly Words[])[] {
  const { supply, feed, detectors, coils, mains, loads } = group;
  const row = (of: {
    readonly id: string;
    readonly terminal: Words;
    readonly conductor: ConductorKind;
    readonly goal: Words;
    readonly cable: Words;
  }): readonly Words[] => [
    names.of(of.id),
    of.terminal,
    of.conductor === "unknown" ? say`unknown` : markings[of.conductor],
    of.conductor === "unknown" ? "" : colourWords(of.conductor, supply.region),
    of.goal,
    of.cable,
    "",
  ];
  const cablesAt = (id: string, conductor: ConductorKind): string =>
    group.cables
      .filter(({ from, to, conductors }) => (from === id || to === id) && conductors.includes(conductor))
      .map(({ designation }) => designation)
      .join(", ");
  const circuit = feed?.circuit.name ?? say`unknown`;
  return [
    ...coils.flatMap(({ id, pack }) => {
      if (pack)
        return (["low-plus", "low-minus", "low-signal"] as const).map((conductor) =>
          row({
            id,
            terminal: conductor === "low-plus" ? "+" : conductor === "low-minus" ? "−" : say`signal`,
            conductor,
            goal: detectors.map(({ wired }) => wired.tag).join(", "),
            cable: cablesAt(id, conductor),
          }),
        );
      return [
        row({
          id,
          terminal: "A1",
          conductor: "switched",
          goal: detectors
            .filter(({ wired }) => wired.output !== undefined)
            .map(({ wired }) => wired.tag)
            .join(", "),
          cable: cablesAt(id, "switched"),
        }),
        row({ id, terminal: "A2", conductor: "neutral", goal: circuit, cable: cablesAt(id, "neutral") }),
      ];
    }),
    ...mains.flatMap(({ id, inBoard }) =>
      brokenBy(group).flatMap(({ line, switched }, i) => [
        row({
          id,
          terminal: String(2 * i + 1),
          conductor: line,
          goal: circuit,
          cable: inBoard === "yes" ? say`in the board` : cablesAt(id, line),
        }),
        row({
          id,
          terminal: String(2 * i + 2),
          conductor: switched,
          goal: joined(
            loads
              .filter((load) => switchedFor(group, load) === switched)
              .map(({ designation }) => designation),
            ", ",
          ),
          cable: cablesAt(id, switched),
        }),
      ]),
    ),
  ];
}
