import { useState } from "react";
import { Button } from "react-aria-components";
import type { DetectorModel } from "#engine";
import { FigureField, LengthField, More, Say, TextBox, Tick } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import { HeightsTable } from "./heights-table.tsx";
import {
  type DraftChange,
  limitsOf,
  type ModelDraft,
  missingIn,
  modelOf,
  withCell,
  zoneKinds,
} from "./model-draft.ts";
import { OutlineEditor } from "./outline-editor.tsx";
import { SheetElectrical } from "./sheet-electrical.tsx";
import { SheetMounting } from "./sheet-mounting.tsx";
import { SheetRest } from "./sheet-rest.tsx";
import { ViewHead } from "./view-head.tsx";
import { ZonePicture } from "./zone-picture.tsx";

interface ModelFormProps {
  readonly draft: ModelDraft;
  /** A change of what stands now: a field that is left by pressing a tick says its own after the tick. */
  readonly onChange: (change: DraftChange) => void;
  /** Detectors of the job that are of this model. */
  readonly used: number;
  readonly onSave: (make: (id: string) => DetectorModel, keep: "job" | "job-and-firm") => void;
  readonly onDelete: (() => void) | undefined;
  readonly onBack: () => void;
}

/** Which cell's outline is being drawn. */
interface Drawn {
  readonly row: number;
  readonly kind: (typeof zoneKinds)[number];
}

/** A data sheet in two minutes: six figures in sight, the rest behind "more", what is missing said to be unknown. */
export function ModelForm({ draft, onChange, used, onSave, onDelete, onBack }: ModelFormProps) {
  const [keep, setKeep] = useState(draft.rest.demo !== true);
  const [tried, setTried] = useState(false);
  const [drawn, setDrawn] = useState<Drawn | undefined>();
  const missing = missingIn(draft);
  const first = draft.heights[0]!;
  const set = (change: Partial<ModelDraft>) => onChange((now) => ({ ...now, ...change }));
  const preview = modelOf(draft, "preview");
  const known = zoneKinds.filter((kind) => preview.zones[kind] !== undefined);
  if (drawn !== undefined) {
    const cell = draft.heights[drawn.row]?.cells[drawn.kind];
    return (
      <OutlineEditor
        kind={drawn.kind}
        points={cell?.shape === "outline" ? cell.points : []}
        onDone={(points) => {
          if (points !== undefined)
            onChange((now) =>
              withCell(now, drawn, points.length < 3 ? undefined : { shape: "outline", points }),
            );
          setDrawn(undefined);
        }}
      />
    );
  }
  return (
    <div className="stack">
      <div className="row row-apart">
        <ViewHead>{t(draft.id === undefined ? "models.new" : "models.edit")}</ViewHead>
        <Button className="button button-quiet" onPress={onBack}>
          {t("models.back")}
        </Button>
      </div>
      <div className="model-form">
        <div className="stack">
          <div className="fields">
            <TextBox
              label={t("models.title")}
              value={draft.title}
              onChange={(title) => set({ title })}
              needed
              wide
            />
            <LengthField
              label={t("models.height")}
              value={first.height}
              least={1.5}
              most={30}
              when="typing"
              onChange={(height) =>
                onChange((now) => ({
                  ...now,
                  heights: now.heights.map((row, index) => (index === 0 ? { ...row, height } : row)),
                }))
              }
            />
            {(["towards", "across", "seated"] as const).map((kind) => {
              const cell = first.cells[kind];
              return cell?.shape === "outline" ? (
                <div key={kind} className="field">
                  <span className="field-label">{t(`models.diameter.${kind}`)}</span>
                  <Button className="button" onPress={() => setDrawn({ row: 0, kind })}>
                    {t("models.outline.change")}
                  </Button>
                </div>
              ) : (
                <LengthField
                  key={kind}
                  label={t(`models.diameter.${kind}`)}
                  value={cell?.diameter}
                  placeholder={t(kind === "across" ? "models.as-towards" : "fields.unknown")}
                  least={0.2}
                  most={100}
                  when="typing"
                  onChange={(diameter) =>
                    onChange((now) => withCell(now, { row: 0, kind }, { shape: "round", diameter }))
                  }
                  onClear={() => onChange((now) => withCell(now, { row: 0, kind }, undefined))}
                />
              );
            })}
            <FigureField
              label={t("models.cost")}
              value={draft.cost}
              least={0}
              most={1_000_000}
              onChange={(cost) => set({ cost })}
              onClear={() => set({ cost: undefined })}
              placeholder={t("models.cost.unknown")}
            />
          </div>
          <Tick
            on={first.cells.sound !== undefined}
            onChange={(on) =>
              onChange((now) =>
                withCell(
                  now,
                  { row: 0, kind: "sound" },
                  on ? { shape: "round", diameter: roundDiameter(now) } : undefined,
                ),
              )
            }
          >
            {t("models.sound")}
          </Tick>
          {first.cells.sound?.shape === "round" ? (
            <div className="fields">
              <LengthField
                label={t("models.diameter.sound")}
                value={first.cells.sound.diameter}
                hint={t("models.sound.assumed")}
                least={0.2}
                most={100}
                onChange={(diameter) =>
                  onChange((now) => withCell(now, { row: 0, kind: "sound" }, { shape: "round", diameter }))
                }
              />
            </div>
          ) : null}
        </div>
        {known.length === 0 ? null : (
          <figure className="model-figure">
            <ZonePicture zones={preview.zones} height={first.height} size="large" />
            <figcaption className="hint">
              {known.map((kind) => (
                <span key={kind} className={`zone-word zone-word-${kind}`}>
                  {t(`zone.${kind}`)}
                </span>
              ))}
            </figcaption>
          </figure>
        )}
      </div>
      <More>
        <div className="stack">
          <HeightsTable draft={draft} onChange={onChange} onDraw={(row, kind) => setDrawn({ row, kind })} />
          <SheetRest draft={draft} limits={limitsOf(draft)} onChange={onChange} />
          <More word={t("models.mounting")}>
            <SheetMounting draft={draft} onChange={onChange} />
          </More>
          <More word={t("models.electrical")}>
            <SheetElectrical draft={draft} onChange={onChange} />
          </More>
        </div>
      </More>
      {tried && missing.length > 0 ? (
        <Say severity="must" live>
          {missing.map((what) => (
            <p key={what}>{t(`models.missing.${what}`)}</p>
          ))}
        </Say>
      ) : null}
      {draft.rest.demo === true ? <Say severity="should">{t("models.invented.edit")}</Say> : null}
      <div className="row">
        <Button
          className="button button-first"
          onPress={() => {
            setTried(true);
            if (missing.length === 0) onSave((id) => modelOf(draft, id), keep ? "job-and-firm" : "job");
          }}
        >
          {t("models.save")}
        </Button>
        {draft.rest.demo === true ? null : (
          <Tick on={keep} onChange={setKeep}>
            {t("models.keep")}
          </Tick>
        )}
        {onDelete === undefined ? null : used > 0 ? (
          <span className="hint">{t("models.in-use", { count: used })}</span>
        ) : (
          <Button className="button button-quiet" onPress={onDelete}>
            {t("models.delete")}
          </Button>
        )}
      </div>
    </div>
  );
}

/** Without a figure of its own, hearing is taken to reach as far as seeing one who sits. */
function roundDiameter({ heights }: ModelDraft): number {
  const { seated, towards } = heights[0]!.cells;
  if (seated?.shape === "round") return seated.diameter;
  return towards?.shape === "round" ? towards.diameter / 2 : 4;
}
