import type { Room } from "#engine";
import type { OpenJob } from "../contract.ts";
import { LengthField } from "../fields/index.ts";
import { resizeSteps, sizeOf } from "../plan/edit/room-size.ts";
import { t } from "../texts/index.ts";

/** A rectangular room's size as two figures: typing one moves a wall. */
export function RoomSize({ job, room }: { readonly job: OpenJob; readonly room: Room }) {
  const size = sizeOf(room);
  if (!size) return null;
  return (["across", "up"] as const).map((way) => (
    <LengthField
      key={way}
      label={t(`edit.size.${way}`)}
      value={size[way]}
      least={0.1}
      most={1000}
      onChange={(length) => job.edit("plan.edit.reshape", resizeSteps(job.site, room, { way, length }))}
    />
  ));
}
