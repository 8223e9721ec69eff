import { controlledRooms, type Room, roomTitle } from "#engine";
import { setFields } from "../cards/edits.ts";
import type { OpenJob } from "../contract.ts";
import { Choice, More } from "../fields/index.ts";
import { t } from "../texts/set.ts";

interface PlaceFactsProps {
  readonly job: OpenJob;
  readonly device: string;
}

/** What people know of the rooms that a detector lights, and the plan does not say. */
export function PlaceFacts({ job, device }: PlaceFactsProps) {
  const detector = job.site.detectors.find(({ id }) => id === device);
  const lit = detector ? controlledRooms(detector) : [];
  return (
    <More word={t("set.place")}>
      <div className="stack">
        <p className="hint">{t("set.place.hint")}</p>
        {job.site.rooms
          .filter(({ id }) => lit.includes(id))
          .map((room) => (
            <RoomFacts key={room.id} job={job} room={room} />
          ))}
      </div>
    </More>
  );
}

function RoomFacts({ job, room }: { readonly job: OpenJob; readonly room: Room }) {
  const title = roomTitle(room);
  const set = (fields: {
    readonly daylight?: boolean | undefined;
    readonly escapeRoute?: boolean | undefined;
  }) => setFields(job, { kind: "rooms", id: room.id }, fields as Partial<Room>);
  const known = { yes: true, no: false, unknown: undefined } as const;
  const wordOf = (fact: boolean | undefined): keyof typeof known =>
    fact === undefined ? "unknown" : fact ? "yes" : "no";
  return (
    <>
      <Choice
        label={t("set.place.daylight", { room: title })}
        value={wordOf(room.daylight)}
        options={[
          { value: "unknown", word: t("set.place.daylight.windows") },
          { value: "yes", word: t("set.place.daylight.reaches") },
          { value: "no", word: t("set.place.daylight.none") },
        ]}
        onChange={(word) => set({ daylight: known[word] })}
      />
      <Choice
        label={t("set.place.escape", { room: title })}
        value={wordOf(room.escapeRoute)}
        options={[
          { value: "unknown", word: t("fields.unknown") },
          { value: "yes", word: t("set.place.escape.yes") },
          { value: "no", word: t("set.place.escape.no") },
        ]}
        onChange={(word) => set({ escapeRoute: known[word] })}
      />
    </>
  );
}
