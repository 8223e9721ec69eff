import type { Room } from "#engine";
import type { OpenJob } from "../contract.ts";
import { LengthField } from "../fields/index.ts";
import { resizeSteps, sizeOf } from "../plan/edit/room-size.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";
import { SideLength } from "./side-length.tsx";

interface RoomSizeProps {
  readonly job: OpenJob;
  readonly room: Room;
  readonly store: Store<Workbench>;
}

/** A rectangular room's size as two figures, any other room's as the length of a side: typing one moves a wall. */
export function RoomSize({ job, room, store }: RoomSizeProps) {
  const size = sizeOf(room);
  if (!size) return job.readOnly ? null : <SideLength job={job} room={room} store={store} />;
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
