import { useMemo, useState } from "react";
import { Button, Label, TextArea, TextField } from "react-aria-components";
import { roomUse } from "#exchange";
import type { OpenJob } from "../../contract.ts";
import { Pick, Say } from "../../fields/index.ts";
import { useUnits } from "../../settings/preferences.ts";
import { lengthText } from "../../texts/index.ts";
import { t } from "../../texts/rooms.ts";
import type { ListUnit } from "./list-headings.ts";
import { ceilingOn, roomSteps } from "./rooms-of-list.ts";
import { readSizes, type SizesList } from "./sizes-list.ts";
import "./rooms.css";

interface ListPasteProps {
  readonly job: OpenJob;
  /** Where the rooms are laid out. */
  readonly storey: string;
  /** Called at the end with the ids of the rooms that were made; none where one went back. */
  readonly onDone: (rooms: readonly string[]) => void;
  /** Why the sizes should be looked at again. */
  readonly doubt?: string;
}

const listUnits: readonly ListUnit[] = ["m", "cm", "mm", "ft", "in"];
/** Rooms that the preview shows before it only counts them. */
const mostShown = 100;

/** Rooms out of a spreadsheet: pasted, looked at, and laid out in one step. */
export function ListPaste({ job, storey, onDone, doubt }: ListPasteProps) {
  const units = useUnits();
  const [text, setText] = useState("");
  const [unit, setUnit] = useState<ListUnit | undefined>();
  const list = useMemo(() => readSizes(text, { unit, units }), [text, unit, units]);
  const lay = (): void => {
    const { steps, rooms } = roomSteps(list.rooms, {
      job,
      storey,
      storeyName: t("rooms.storey"),
      ...(doubt === undefined ? {} : { doubt }),
    });
    job.edit("rooms.edit.list", steps);
    onDone(rooms);
  };
  return (
    <div className="stack">
      <div className="row row-apart">
        <h2 className="panel-title">{t("rooms.list.open")}</h2>
        <Button className="button" onPress={() => onDone([])}>
          {t("rooms.list.back")}
        </Button>
      </div>
      <TextField className="field" value={text} onChange={setText} autoFocus>
        <Label className="field-label">{t("rooms.list.label")}</Label>
        <TextArea
          className="field-input list-text"
          rows={text === "" ? 5 : 4}
          wrap="off"
          spellCheck={false}
          placeholder={t("rooms.list.example")}
        />
      </TextField>
      {list.unitMatters ? (
        <div className="fields">
          <Pick
            label={t("rooms.list.unit")}
            value={list.unit}
            options={listUnits.map((value) => ({ value, word: t(`rooms.unit.${value}`) }))}
            onChange={setUnit}
          />
        </div>
      ) : null}
      <Understood job={job} storey={storey} list={list} />
      {list.rooms.length > 0 ? (
        <Button className="button button-first wide-button" onPress={lay}>
          {t("rooms.list.lay", { count: list.rooms.length })}
        </Button>
      ) : null}
    </div>
  );
}

function Understood({
  job,
  storey,
  list,
}: {
  readonly job: OpenJob;
  readonly storey: string;
  readonly list: SizesList;
}) {
  const units = useUnits();
  const ceiling = ceilingOn(job, storey);
  return (
    <>
      {list.strange.length > 0 ? (
        <Say severity="should">
          {list.strange.slice(0, 10).map(({ line, text, why, part }) => (
            <p key={line}>{t(`rooms.list.why.${why}`, { line, text, part })}</p>
          ))}
          {list.strange.length > 10 ? (
            <p>{t("rooms.paste.more", { count: list.strange.length - 10 })}</p>
          ) : null}
        </Say>
      ) : null}
      {list.unused.length > 0 ? (
        <p className="hint">{t("rooms.list.unused", { columns: list.unused.join(", ") })}</p>
      ) : null}
      {list.rooms.length > 0 ? (
        <div className="list-understood">
          <table>
            <caption className="unseen">{t("rooms.list.understood")}</caption>
            <thead>
              <tr>
                <th scope="col">{t("rooms.column.number")}</th>
                <th scope="col">{t("rooms.column.name")}</th>
                <th scope="col">{t("rooms.column.use")}</th>
                <th scope="col" className="rooms-figure">
                  {t("rooms.list.length")}
                </th>
                <th scope="col" className="rooms-figure">
                  {t("rooms.list.width")}
                </th>
                <th scope="col" className="rooms-figure">
                  {t("rooms.column.ceilingHeight")}
                </th>
              </tr>
            </thead>
            <tbody>
              {list.rooms.slice(0, mostShown).map((room) => (
                <tr key={room.line}>
                  <td>{room.number}</td>
                  <td>{room.name}</td>
                  <td className={room.use ? "" : "list-assumed"}>
                    {t(`use.${room.use ?? roomUse(room.name)}`)}
                  </td>
                  <td className="rooms-figure">{lengthText(room.length, units)}</td>
                  <td className="rooms-figure">{lengthText(room.width, units)}</td>
                  <td className={room.height === undefined ? "rooms-figure list-assumed" : "rooms-figure"}>
                    {lengthText(room.height ?? ceiling, units)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {list.rooms.length > mostShown ? (
            <p className="hint">{t("rooms.paste.more", { count: list.rooms.length - mostShown })}</p>
          ) : null}
          <p className="hint">{t("rooms.list.assumed")}</p>
        </div>
      ) : null}
    </>
  );
}
