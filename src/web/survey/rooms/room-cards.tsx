import { useState } from "react";
import type { Room } from "#engine";
import type { OpenJob } from "../../contract.ts";
import { LengthField, Pick, TextBox } from "../../fields/index.ts";
import { useUnits } from "../../settings/preferences.ts";
import { lengthText } from "../../texts/index.ts";
import { t } from "../../texts/rooms.ts";
import { heightLimits } from "./sizes-list.ts";
import { setRoom } from "./table-block.ts";
import { uses } from "./uses.ts";

interface RoomCardsProps {
  readonly job: OpenJob;
  readonly rooms: readonly Room[];
  readonly onChoose: (id: string) => void;
}

/** The rooms one below the other, for a hand: touching one opens its fields. */
export function RoomCards({ job, rooms, onChoose }: RoomCardsProps) {
  const units = useUnits();
  const [open, setOpen] = useState<string | undefined>();
  return (
    <ul className="room-cards">
      {rooms.map((room) => (
        <li key={room.id} className="room-line">
          <button
            type="button"
            className="room-line-head"
            aria-expanded={open === room.id}
            onClick={() => {
              setOpen(open === room.id ? undefined : room.id);
              onChoose(room.id);
            }}
          >
            <span className="room-line-name">{`${room.number} ${room.name}`.trim() || t("name.room")}</span>
            <span className="room-line-what">
              {t("rooms.card.what", {
                use: t(`use.${room.use}`),
                height: lengthText(room.ceilingHeight, units),
              })}
            </span>
            {room.proposed ? <span className="rooms-proposed">{t("rooms.proposed")}</span> : null}
          </button>
          {open === room.id && !job.readOnly ? <RoomFields job={job} room={room} /> : null}
        </li>
      ))}
    </ul>
  );
}

function RoomFields({ job, room }: { readonly job: OpenJob; readonly room: Room }) {
  const set = (fields: Partial<Room>): void => job.edit("rooms.edit.cell", [setRoom(room.id, fields)]);
  return (
    <div className="fields room-line-fields">
      <TextBox label={t("rooms.column.number")} value={room.number} onChange={(number) => set({ number })} />
      <TextBox label={t("rooms.column.name")} value={room.name} onChange={(name) => set({ name })} />
      <Pick
        label={t("rooms.column.use")}
        value={room.use}
        options={uses.map((use) => ({ value: use, word: t(`use.${use}`) }))}
        onChange={(use) => set({ use })}
      />
      <LengthField
        label={t("rooms.column.ceilingHeight")}
        value={room.ceilingHeight}
        least={heightLimits.least}
        most={heightLimits.most}
        onChange={(ceilingHeight) => set({ ceilingHeight })}
      />
    </div>
  );
}
