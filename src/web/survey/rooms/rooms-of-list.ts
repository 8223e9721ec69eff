import type { Metres, Room } from "#engine";
import { roomUse } from "#exchange";
import type { EditStep, OpenJob } from "../../contract.ts";
import { putStep } from "../../plan/edit/steps.ts";
import { type Bounds, packedInRows } from "./row-packing.ts";
import type { ListedRoom } from "./sizes-list.ts";

/** What a ceiling is taken for where nobody says and no room of the storey tells. Common practice, no source. */
const usualCeiling: Metres = 2.7;

/** What lists and telephone calls have in common: sizes of rooms. */
export type SizedRoom = Omit<ListedRoom, "line">;

interface Given {
  readonly job: Pick<OpenJob, "site" | "underlays" | "newId">;
  /** Id of the storey; the first room of an empty job brings one along. */
  readonly storey: string;
  /** What a storey that has to be made is called. */
  readonly storeyName: string;
  /** Why a person should look at the sizes again; absent: they were measured. */
  readonly doubt?: string;
}

/** Steps that lay rooms out beside what is on the storey, and the ids of the rooms. A use or a height that nobody gave is the usual one. */
export function roomSteps(
  listed: readonly SizedRoom[],
  given: Given,
): { readonly steps: readonly EditStep[]; readonly rooms: readonly string[] } {
  const { job, doubt } = given;
  const known = job.site.storeys.some(({ id }) => id === given.storey);
  const storey = known ? given.storey : job.newId("storeys");
  const corners = packedInRows(listed, boundsOn(job, storey));
  const ceiling = ceilingOn(job, storey);
  const rooms = listed.map((one, index): Room => {
    const [x, y] = corners[index]!;
    return {
      id: job.newId("rooms"),
      storey,
      number: one.number,
      name: one.name,
      use: one.use ?? roomUse(one.name),
      outline: [
        [x, y],
        [x + one.length, y],
        [x + one.length, y + one.width],
        [x, y + one.width],
      ],
      holes: [],
      floor: 0,
      ceilingHeight: one.height ?? ceiling,
      demand: { catch: true, walk: true, hold: true },
      noDevices: [],
      ...(doubt === undefined ? {} : { proposed: { confidence: 0, reason: doubt } }),
    };
  });
  return {
    steps: [
      ...(known ? [] : [putStep("storeys", { id: storey, name: given.storeyName, elevation: 0 })]),
      ...rooms.map((room) => putStep("rooms", room)),
    ],
    rooms: rooms.map(({ id }) => id),
  };
}

/** The ceiling that most rooms of the storey have. */
export function ceilingOn({ site }: Pick<OpenJob, "site">, storey: string): Metres {
  const counts = new Map<Metres, number>();
  for (const room of site.rooms)
    if (room.storey === storey) counts.set(room.ceilingHeight, (counts.get(room.ceilingHeight) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? usualCeiling;
}

/** Edges of the rooms and of the lines that lie on a storey. */
function boundsOn({ site, underlays }: Given["job"], storey: string): Bounds | undefined {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  const take = (x: Metres, y: Metres): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  };
  for (const room of site.rooms) if (room.storey === storey) for (const [x, y] of room.outline) take(x, y);
  for (const { storey: under, lines } of underlays)
    if (under === storey) for (let i = 0; i + 1 < lines.length; i += 2) take(lines[i]!, lines[i + 1]!);
  return left <= right ? { left, right, bottom, top } : undefined;
}
