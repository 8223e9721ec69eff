import type { WiringPlan } from "./plan.ts";

/** A device or luminaire where more cables meet than go in and out. */
export interface BranchPoint {
  readonly id: string;
  readonly cables: number;
}

/** Where cables branch: each point wants a box that can be got at, and its minutes. Boards, and contactors in them, have room of their own. */
export function branchPoints({ groups, built }: WiringPlan): readonly BranchPoint[] {
  const own = new Set([
    "",
    ...built.model.boards.map(({ id }) => id),
    ...built.model.contactors.map(({ id }) => id),
  ]);
  const meeting = new Map<string, number>();
  for (const { cables } of groups)
    for (const { from, to } of cables)
      for (const id of [from, to]) if (!own.has(id)) meeting.set(id, (meeting.get(id) ?? 0) + 1);
  return [...meeting].flatMap(([id, cables]) => (cables > 2 ? [{ id, cables }] : []));
}
