import type { CeilingThing, DwellPlace, FloorPiece, Interference, Obstacle, Switch } from "#engine";
import { ceilingThingKinds, dwellKinds, interferenceKinds, obstacleKinds, switchKinds } from "#job";
import type { OpenJob } from "../contract.ts";
import { Choice, LengthField, More, Pick, TextBox, Tick } from "../fields/index.ts";
import { moveSteps } from "../plan/change.ts";
import type { FieldsOf } from "../plan/edit/steps.ts";
import { middleOf, ringArea } from "../plan/shapes.ts";
import { useUnits } from "../settings/preferences.ts";
import { areaText, lengthText, t } from "../texts/index.ts";
import { setFields } from "./edits.ts";
import { Figures } from "./figures.tsx";
import { PlaceFields } from "./place-fields.tsx";

interface Of<T> {
  readonly job: OpenJob;
  readonly record: T;
}

export function ObstacleCard({ job, record }: Of<Obstacle>) {
  const units = useUnits();
  const ref = { kind: "obstacles", id: record.id } as const;
  const set = (fields: Partial<Obstacle>): void => setFields(job, ref, fields);
  const middle = middleOf(record.footprint);
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={record.kind}
        options={obstacleKinds.map((kind) => ({ value: kind, word: t(`obstacle.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <div className="fields">
        <LengthField
          label={t("card.obstacle.base")}
          value={record.base}
          least={0}
          onChange={(base) => set({ base })}
        />
        <LengthField
          label={t("card.obstacle.top")}
          value={record.top}
          least={record.base + 0.01}
          onChange={(top) => set({ top })}
        />
      </div>
      <p className="hint">{t(hiding(record))}</p>
      <More>
        <div className="stack">
          <TextBox label={t("card.name")} value={record.name} onChange={(name) => set({ name })} />
          <Tick on={record.seeThrough} onChange={(seeThrough) => set({ seeThrough })}>
            {t("card.obstacle.see-through")}
          </Tick>
          <PlaceFields
            at={middle}
            onChange={([x, y]) =>
              job.edit("plan.edit.move", moveSteps(job.site, [ref], [x - middle[0], y - middle[1]]))
            }
          />
          <Figures rows={[[t("card.room.area"), areaText(Math.abs(ringArea(record.footprint)), units)]]} />
        </div>
      </More>
    </div>
  );
}

/** What it hides, in a sentence, from its heights. */
function hiding({ base, top, kind, seeThrough }: Obstacle) {
  if (seeThrough) return "card.obstacle.hides.verify";
  if (kind === "glass") return "card.obstacle.hides.glass";
  if (base >= 1.9) return "card.obstacle.hides.above";
  return top <= 0.9 ? "card.obstacle.hides.low" : "card.obstacle.hides.behind";
}

export function DwellCard({ job, record }: Of<DwellPlace>) {
  const units = useUnits();
  const set = (fields: Partial<DwellPlace>): void =>
    setFields(job, { kind: "dwellPlaces", id: record.id }, fields);
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={record.kind}
        options={dwellKinds.map((kind) => ({ value: kind, word: t(`dwell.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <LengthField
        label={t("card.radius")}
        value={record.radius}
        least={0.1}
        most={5}
        hint={t("card.dwell.sight", {
          height: lengthText(job.site.defaults.sightHeights[record.kind], units),
        })}
        onChange={(radius) => set({ radius })}
      />
      <More>
        <PlaceFields at={record.at} onChange={(at) => set({ at })} />
      </More>
    </div>
  );
}

export function SourceCard({ job, record }: Of<Interference>) {
  const units = useUnits();
  const set = (fields: FieldsOf<"interference">): void =>
    setFields(job, { kind: "interference", id: record.id }, fields);
  const { clearances } = job.site.defaults;
  const usual = record.kind === "air-outlet" ? clearances.airOutlet : clearances.heater;
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={record.kind}
        options={interferenceKinds.map((kind) => ({ value: kind, word: t(`interference.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <div className="fields">
        <LengthField
          label={t("card.height")}
          value={record.height}
          least={0}
          onChange={(height) => set({ height })}
        />
        <LengthField
          label={t("card.source.clearance")}
          value={record.clearance}
          least={0}
          placeholder={lengthText(usual, units)}
          onChange={(clearance) => set({ clearance })}
          onClear={() => set({ clearance: undefined })}
        />
      </div>
      <p className="hint">{t("card.source.hint")}</p>
      <More>
        <div className="stack">
          <PlaceFields at={record.at} onChange={(at) => set({ at })} />
          <Tick
            on={record.to !== undefined}
            onChange={(on) => set(on ? { to: [record.at[0] + 1, record.at[1]] } : { to: undefined })}
          >
            {t("card.source.line")}
          </Tick>
          {record.to ? <PlaceFields at={record.to} onChange={(to) => set({ to })} /> : null}
        </div>
      </More>
    </div>
  );
}

export function CeilingThingCard({ job, record }: Of<CeilingThing>) {
  const set = (fields: Partial<CeilingThing>): void =>
    setFields(job, { kind: "ceilingThings", id: record.id }, fields);
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={record.kind}
        options={ceilingThingKinds.map((kind) => ({ value: kind, word: t(`ceiling.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <PlaceFields at={record.at} onChange={(at) => set({ at })} />
    </div>
  );
}

export function SwitchCard({ job, record }: Of<Switch>) {
  const set = (fields: Partial<Switch>): void => setFields(job, { kind: "switches", id: record.id }, fields);
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={record.kind}
        options={switchKinds.map((kind) => ({ value: kind, word: t(`switch.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <LengthField label={t("card.height")} value={record.height} onChange={(height) => set({ height })} />
      <PlaceFields at={record.at} onChange={(at) => set({ at })} />
    </div>
  );
}

export function FloorPieceCard({ job, record }: Of<FloorPiece>) {
  const set = (fields: Partial<FloorPiece>): void =>
    setFields(job, { kind: "floorPieces", id: record.id }, fields);
  return (
    <div className="stack">
      <Choice
        label={t("card.kind")}
        value={record.kind}
        options={[
          { value: "landing", word: t("floor.landing") },
          { value: "flight", word: t("floor.flight") },
        ]}
        onChange={(kind) => set({ kind })}
      />
      <div className="fields">
        <LengthField label={t("card.floor.low")} value={record.low} onChange={(low) => set({ low })} />
        <LengthField label={t("card.floor.high")} value={record.high} onChange={(high) => set({ high })} />
      </div>
      <p className="hint">{t("card.floor.hint")}</p>
    </div>
  );
}
