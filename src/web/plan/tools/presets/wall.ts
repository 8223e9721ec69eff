import { type Added, type Ground, roomOf, type Span } from "./ground.ts";
import { row } from "./rows.ts";

/** A wall inside a room: a partition up to the ceiling. */
export function wall(ground: Ground, span: Span): Added | undefined {
  const room = roomOf(ground, span);
  const screen = row("partition", ground, span);
  if (!room || !screen) return undefined;
  const steps = screen.steps.map((step) =>
    step.do === "put" && step.kind === "obstacles"
      ? { ...step, record: { ...step.record, top: room.ceilingHeight } }
      : step,
  );
  return { ...screen, steps };
}
