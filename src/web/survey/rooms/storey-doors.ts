import type { Site } from "#engine";
import type { EditStep } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { leadsUpOrDown, relinked, seenFromSecond } from "../../plan/edit/openings.ts";
import { setStep } from "../../plan/edit/steps.ts";

/** The same steps, and those that keep doors true where rooms go to another storey: no door joins two storeys, each leads to what lies behind it now. */
export function withDoors(site: Site, steps: readonly EditStep[]): readonly EditStep[] {
  const moved = new Set(
    steps.flatMap((step) =>
      step.do === "set" && step.kind === "rooms" && "storey" in step.fields ? [step.id] : [],
    ),
  );
  if (moved.size === 0) return steps;
  const after = applied(site, steps);
  const doors = after.openings.flatMap((opening): EditStep[] => {
    const [first, second] = opening.rooms;
    if (!moved.has(first) && !(second !== null && moved.has(second))) return [];
    // One that joined two storeys before was meant to: it leads up or down a stair.
    if (leadsUpOrDown(site, opening)) return [];
    // A door between a room that goes and one that stays belongs to the wall of the one that stays.
    const stays = moved.has(first) && second !== null && !moved.has(second);
    const seen = stays ? seenFromSecond(site, opening) : opening;
    const { id: _, ...fields } = relinked(after, { ...seen, rooms: [seen.rooms[0], null] });
    return [setStep("openings", opening.id, fields)];
  });
  return [...steps, ...doors];
}
