import type { Room } from "#engine";
import { Choice, LengthField } from "../fields/index.ts";
import type { FieldsOf } from "../plan/edit/steps.ts";
import { t } from "../texts/index.ts";

interface RoomWaterProps {
  readonly room: Room;
  readonly set: (fields: FieldsOf<"rooms">) => void;
}

const wetOf = { unknown: undefined, yes: true, no: false } as const;

/** Whether water may splash in a room; nobody having said is an answer of its own. In a wet one, how high its outlets are. */
export function RoomWater({ room, set }: RoomWaterProps) {
  return (
    <>
      <Choice
        label={t("card.room.mark.wet")}
        value={room.wet === undefined ? "unknown" : room.wet ? "yes" : "no"}
        options={[
          { value: "unknown", word: t("fields.unknown") },
          { value: "yes", word: t("card.room.wet.yes") },
          { value: "no", word: t("card.room.wet.no") },
        ]}
        onChange={(word) => set({ wet: wetOf[word] })}
      />
      {room.wet ? (
        <LengthField
          label={t("card.room.outlet")}
          value={room.highestOutlet}
          placeholder={t("fields.unknown")}
          least={0.1}
          most={10}
          hint={t("card.room.outlet.hint")}
          onChange={(highestOutlet) => set({ highestOutlet })}
          onClear={() => set({ highestOutlet: undefined })}
        />
      ) : null}
    </>
  );
}
