import { Button } from "react-aria-components";
import { type Point, type Room, radiansOf } from "#engine";
import type { Calculator } from "../calculate/calculator.ts";
import { useCalculated } from "../calculate/use-calculated.ts";
import type { OpenJob } from "../contract.ts";
import { AngleField, FigureField, LengthField, More, Pick, Say, TextBox, Tick } from "../fields/index.ts";
import { cornerSteps } from "../plan/change.ts";
import type { FieldsOf } from "../plan/edit/steps.ts";
import { roomArea } from "../plan/shapes.ts";
import { useUnits } from "../settings/preferences.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { uses } from "../survey/rooms/uses.ts";
import { areaText, lengthText, percentText, t } from "../texts/index.ts";
import { setFields } from "./edits.ts";
import { Figures } from "./figures.tsx";
import { PlaceFields } from "./place-fields.tsx";
import { RoomPlanning } from "./room-planning.tsx";
import { RoomSize } from "./room-size.tsx";
import { RoomWater } from "./room-water.tsx";

interface RoomCardProps {
  readonly job: OpenJob;
  readonly room: Room;
  readonly calculator: Calculator;
  readonly store: Store<Workbench>;
  readonly onPlace: () => void;
  readonly onDay: () => void;
}

export function RoomCard({ job, room, calculator, store, onPlace, onDay }: RoomCardProps) {
  const set: Set = (fields) => setFields(job, { kind: "rooms", id: room.id }, fields);
  const warm = room.use === "plant" || room.use === "changing";
  return (
    <div className="stack">
      <RoomFigures job={job} room={room} calculator={calculator} />
      {room.proposed ? <Proposed proposed={room.proposed} set={job.readOnly ? undefined : set} /> : null}
      <Button className="button button-first wide-button" onPress={onPlace}>
        {t("card.room.place")}
      </Button>
      {job.site.detectors.some(({ controls }) => controls.includes(room.id)) ? (
        <Button className="button wide-button" onPress={onDay}>
          {t("card.day")}
        </Button>
      ) : null}
      <div className="fields">
        <TextBox label={t("card.room.name")} value={room.name} onChange={(name) => set({ name })} wide />
        <Pick
          label={t("card.room.use")}
          value={room.use}
          options={uses.map((use) => ({ value: use, word: t(`use.${use}`) }))}
          onChange={(use) => set({ use })}
          wide
        />
        <RoomSize job={job} room={room} store={store} />
        <LengthField
          label={t("card.room.ceiling")}
          value={room.ceilingHeight}
          least={1.8}
          most={20}
          onChange={(ceilingHeight) => set({ ceilingHeight })}
        />
      </div>
      {warm ? <Warmth room={room} set={set} /> : null}
      <More>
        <div className="stack">
          <TextBox label={t("card.room.number")} value={room.number} onChange={(number) => set({ number })} />
          {warm ? null : <Warmth room={room} set={set} />}
          <fieldset className="plain-set">
            <legend className="field-label">{t("card.room.demand")}</legend>
            {(["catch", "walk", "hold"] as const).map((demand) => (
              <Tick
                key={demand}
                on={room.demand[demand]}
                onChange={(on) => set({ demand: { ...room.demand, [demand]: on } })}
              >
                {t(`card.room.demand.${demand}`)}
              </Tick>
            ))}
          </fieldset>
          <fieldset className="plain-set">
            <legend className="field-label">{t("card.room.marks")}</legend>
            {(["escapeRoute", "fireRatedCeiling"] as const).map((mark) => (
              <Tick
                key={mark}
                on={room[mark] === true}
                onChange={(on) => set({ [mark]: on ? true : undefined })}
              >
                {t(`card.room.mark.${mark}`)}
              </Tick>
            ))}
          </fieldset>
          <RoomWater room={room} set={set} />
          {room.fireRatedCeiling ? (
            <Tick
              on={room.penetrationsSealed === true}
              onChange={(on) => set({ penetrationsSealed: on ? true : undefined })}
            >
              {t("card.room.sealed")}
            </Tick>
          ) : null}
          <CeilingGrid room={room} set={set} />
          <CeilingBuild room={room} set={set} />
          <RoomPlanning job={job} room={room} />
          <Corners job={job} room={room} />
        </div>
      </More>
    </div>
  );
}

/** What a reader of plans, or a voice on the telephone, was not sure of. */
function Proposed({
  proposed,
  set,
}: {
  readonly proposed: NonNullable<Room["proposed"]>;
  readonly set: Set | undefined;
}) {
  const { confidence, reason } = proposed;
  return (
    <Say severity="note">
      {confidence > 0 ? <p>{t("card.room.proposed", { share: percentText(confidence) })}</p> : null}
      {reason === "" ? null : <p>{reason.split(", ").map(doubtText).join(" ")}</p>}
      {set ? (
        <div>
          <Button className="button" onPress={() => set({ proposed: undefined })}>
            {t("card.room.confirm")}
          </Button>
        </div>
      ) : null}
    </Say>
  );
}

/** What readers of plans say of a room, as they write it into the job. */
const doubts = {
  "no door found": "no-door",
  "bounded by single lines": "single-lines",
  "very small": "small",
  "no name in it": "nameless",
  "walls on all sides": "walled",
} as const;

/** In the language that is spoken; what somebody else wrote stays as it is. */
const doubtText = (doubt: string): string =>
  doubt in doubts ? t(`card.room.doubt.${doubts[doubt as keyof typeof doubts]}`) : doubt;

type Set = (fields: FieldsOf<"rooms">) => void;

function Warmth({ room, set }: { readonly room: Room; readonly set: Set }) {
  return (
    <FigureField
      label={t("card.room.temperature")}
      value={room.highestTemperature}
      unit="°C"
      least={-30}
      most={60}
      placeholder="22"
      hint={t("card.room.temperature.hint")}
      onChange={(highestTemperature) => set({ highestTemperature })}
      onClear={() => set({ highestTemperature: undefined })}
    />
  );
}

function RoomFigures({ job, room, calculator }: Omit<RoomCardProps, "onPlace" | "onDay" | "store">) {
  const units = useUnits();
  const coverage = useCalculated(calculator, (known) => known.rooms.get(room.id));
  const devices = job.site.detectors.filter(({ controls }) => controls.includes(room.id)).length;
  const rows: (readonly [string, string])[] = [
    [t("card.room.area"), areaText(roomArea(room), units)],
    [t("card.room.detectors"), String(devices)],
  ];
  if (coverage && devices > 0) {
    const { covered, demanded } = coverage;
    const share = (part: number, whole: number): string =>
      t("card.of", { part: areaText(part, units), whole: areaText(whole, units) });
    if (demanded.walk > 0) rows.push([t("demand.walk"), share(covered.walk, demanded.walk)]);
    if (demanded.hold > 0) rows.push([t("demand.hold"), share(covered.hold, demanded.hold)]);
    if (demanded.catch > 0)
      rows.push([t("demand.catch"), t("card.doors", { part: covered.catch, whole: demanded.catch })]);
    const worst = coverage.darkWalks.reduce((most, walk) => Math.max(most, walk.metres), 0);
    if (coverage.darkWalks.length > 0)
      rows.push([
        t("card.room.dark-walk"),
        coverage.darkWalks.some(({ lit }) => !lit) ? t("card.room.not-lit") : lengthText(worst, units),
      ]);
  }
  return <Figures rows={rows} />;
}

function CeilingGrid({ room, set }: { readonly room: Room; readonly set: Set }) {
  const grid = room.ceilingGrid;
  return (
    <div className="stack">
      <Tick
        on={grid !== undefined}
        onChange={(on) =>
          set(
            on
              ? { ceilingGrid: { tile: [0.6, 0.6], origin: room.outline[0] ?? [0, 0], turn: 0 } }
              : { ceilingGrid: undefined },
          )
        }
      >
        {t("card.room.grid")}
      </Tick>
      {grid ? (
        <>
          <div className="fields">
            <LengthField
              label={t("card.room.grid.wide")}
              value={grid.tile[0]}
              least={0.1}
              onChange={(wide) => set({ ceilingGrid: { ...grid, tile: [wide, grid.tile[1]] } })}
            />
            <LengthField
              label={t("card.room.grid.high")}
              value={grid.tile[1]}
              least={0.1}
              onChange={(high) => set({ ceilingGrid: { ...grid, tile: [grid.tile[0], high] } })}
            />
          </div>
          <AngleField
            label={t("card.turn")}
            value={grid.turn}
            least={radiansOf(-180)}
            most={radiansOf(360)}
            onChange={(turn) => set({ ceilingGrid: { ...grid, turn } })}
          />
          <PlaceFields at={grid.origin} onChange={(origin) => set({ ceilingGrid: { ...grid, origin } })} />
        </>
      ) : null}
    </div>
  );
}

/** What a hole meets: the panel, what is free above it, the boxes. */
function CeilingBuild({ room, set }: { readonly room: Room; readonly set: Set }) {
  return (
    <fieldset className="plain-set">
      <legend className="set-head">{t("card.room.build")}</legend>
      <div className="fields">
        {(["ceilingThickness", "ceilingVoid", "ceilingBoxDepth"] as const).map((name) => (
          <LengthField
            key={name}
            of="part"
            label={t(`card.room.build.${name}`)}
            value={room[name]}
            least={0}
            most={10}
            placeholder={t("fields.unknown")}
            onChange={(length) => set({ [name]: length })}
            onClear={() => set({ [name]: undefined })}
          />
        ))}
      </div>
    </fieldset>
  );
}

/** The outline corner by corner: what the hand does on the plan, in figures. */
function Corners({ job, room }: { readonly job: OpenJob; readonly room: Room }) {
  const ref = { kind: "rooms", id: room.id } as const;
  const edit = (change: Parameters<typeof cornerSteps>[2]): void =>
    job.edit("plan.edit.corner", cornerSteps(job.site, ref, change));
  return (
    <More word={t("card.room.corners", { count: room.outline.length })}>
      <ol className="corners">
        {room.outline.map((corner, index) => {
          const next = room.outline[(index + 1) % room.outline.length] as Point;
          const between: Point = [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2];
          return (
            <li key={`${corner[0]} ${corner[1]}`} className="stack corner">
              <PlaceFields at={corner} onChange={(move) => edit({ index, move })} />
              <div className="row">
                <Button className="button" onPress={() => edit({ index, insert: between })}>
                  {t("card.room.corner.add")}
                </Button>
                <Button
                  className="button"
                  isDisabled={room.outline.length <= 3}
                  onPress={() => edit({ index, drop: "corner" })}
                >
                  {t("card.remove")}
                </Button>
              </div>
            </li>
          );
        })}
      </ol>
    </More>
  );
}
