import { type FormEvent, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Metres, RoomUse } from "#engine";
import { roomUse } from "#exchange";
import type { OpenJob } from "../../contract.ts";
import { LengthField, Pick, TextBox } from "../../fields/index.ts";
import { t } from "../../texts/visit.ts";
import { ceilingOn, roomSteps } from "../rooms/rooms-of-list.ts";
import { heightLimits, sideLimits } from "../rooms/sizes-list.ts";
import { uses } from "../rooms/uses.ts";

interface ToldRoomsProps {
  readonly job: OpenJob;
  readonly storey: string;
  readonly onList: () => void;
  readonly onMade: (rooms: readonly string[]) => void;
}

/** Rooms as a voice tells them: name, two sides, roughly. They stand on the plan at once, and are confirmed when somebody has measured. */
export function ToldRooms({ job, storey, onList, onMade }: ToldRoomsProps) {
  const form = useRef<HTMLFormElement>(null);
  const [name, setName] = useState("");
  const [length, setLength] = useState<Metres | undefined>();
  const [width, setWidth] = useState<Metres | undefined>();
  const [chosen, setUse] = useState<RoomUse | undefined>();
  const usual = ceilingOn(job, storey);
  const [ceiling, setCeiling] = useState<Metres | undefined>();
  /** The fields begin anew for each room. */
  const [count, setCount] = useState(0);
  const use = chosen ?? roomUse(name);
  const told = job.site.rooms.filter((room) => room.storey === storey).length;
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (length === undefined || width === undefined) return;
    const { steps, rooms } = roomSteps([{ number: "", name, use, length, width, height: ceiling }], {
      job,
      storey,
      storeyName: t("rooms.storey"),
      doubt: t("visit.told.doubt"),
    });
    job.edit("visit.told.edit", steps);
    onMade(rooms);
    setName("");
    setLength(undefined);
    setWidth(undefined);
    setUse(undefined);
    setCount(count + 1);
    // The next room begins with its name.
    requestAnimationFrame(() => form.current?.querySelector("input")?.focus());
  };
  return (
    <section className="stack" aria-labelledby="visit-rooms">
      <h3 id="visit-rooms" className="visit-head">
        {t("visit.rooms")}
      </h3>
      <p className="hint">{t("visit.rooms.count", { count: told })}</p>
      {job.readOnly ? null : (
        <form key={count} ref={form} className="stack" onSubmit={add}>
          <div className="fields">
            <TextBox label={t("rooms.column.name")} value={name} onChange={setName} when="typing" />
            <Pick
              label={t("rooms.column.use")}
              value={use}
              options={uses.map((value) => ({ value, word: t(`use.${value}`) }))}
              onChange={setUse}
            />
            <LengthField
              label={t("rooms.list.length")}
              value={length}
              least={sideLimits.least}
              most={sideLimits.most}
              onChange={setLength}
              onClear={() => setLength(undefined)}
              when="typing"
            />
            <LengthField
              label={t("rooms.list.width")}
              value={width}
              least={sideLimits.least}
              most={sideLimits.most}
              onChange={setWidth}
              onClear={() => setWidth(undefined)}
              when="typing"
            />
            <LengthField
              label={t("rooms.column.ceilingHeight")}
              value={ceiling ?? usual}
              least={heightLimits.least}
              most={heightLimits.most}
              onChange={setCeiling}
              when="typing"
            />
          </div>
          <div className="row">
            <Button type="submit" className="button" isDisabled={length === undefined || width === undefined}>
              {t("visit.rooms.add")}
            </Button>
            <Button className="button button-quiet" onPress={onList}>
              {t("visit.rooms.list")}
            </Button>
          </div>
        </form>
      )}
    </section>
  );
}
