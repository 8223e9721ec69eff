import { Button } from "react-aria-components";
import { LengthField } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/models.ts";
import { type DraftChange, type ModelDraft, withCell, zoneKinds } from "./model-draft.ts";

interface HeightsTableProps {
  readonly draft: ModelDraft;
  readonly onChange: (change: DraftChange) => void;
  readonly onDraw: (row: number, kind: (typeof zoneKinds)[number]) => void;
}

/** Every mounting height of the data sheet, each zone as a diameter or as an outline that is not round. */
export function HeightsTable({ draft, onChange, onDraw }: HeightsTableProps) {
  const units = useUnits();
  return (
    <div className="stack">
      {draft.heights.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their place, and a height changes while it is typed
        <fieldset key={index} className="height-row">
          <legend className="field-label">
            {t(index === 0 ? "models.outline.at-height" : "models.at-height", {
              height: lengthText(row.height, units),
            })}
          </legend>
          <div className={index === 0 ? "row" : "fields"}>
            {index === 0 ? null : (
              <LengthField
                label={t("models.height")}
                value={row.height}
                least={1.5}
                most={30}
                onChange={(height) =>
                  onChange((now) => ({
                    ...now,
                    heights: now.heights.map((one, at) => (at === index ? { ...one, height } : one)),
                  }))
                }
              />
            )}
            {zoneKinds.map((kind) => {
              const cell = row.cells[kind];
              return (
                <div key={kind} className="height-cell">
                  {index > 0 && cell?.shape !== "outline" ? (
                    <LengthField
                      label={t(`models.diameter.${kind}`)}
                      value={cell?.diameter}
                      placeholder={t("fields.unknown")}
                      least={0.2}
                      most={100}
                      onChange={(diameter) =>
                        onChange((now) => withCell(now, { row: index, kind }, { shape: "round", diameter }))
                      }
                      onClear={() => onChange((now) => withCell(now, { row: index, kind }, undefined))}
                    />
                  ) : null}
                  {kind === "sound" ? null : (
                    <Button
                      className={index === 0 ? "button" : "button button-quiet height-draw"}
                      aria-label={t(
                        cell?.shape === "outline" ? "models.outline.change-of" : "models.outline.draw",
                        { zone: t(`zone.${kind}`) },
                      )}
                      onPress={() => onDraw(index, kind)}
                    >
                      {index === 0
                        ? t(`zone.${kind}`)
                        : t(cell?.shape === "outline" ? "models.outline.change" : "models.outline.draw-it")}
                    </Button>
                  )}
                  {cell?.shape === "outline" ? (
                    <Button
                      className="button button-quiet height-draw"
                      onPress={() => onChange((now) => withCell(now, { row: index, kind }, undefined))}
                    >
                      {t("models.outline.remove", { zone: t(`zone.${kind}`) })}
                    </Button>
                  ) : null}
                </div>
              );
            })}
          </div>
          {index === 0 ? null : (
            <Button
              className="button button-quiet"
              onPress={() =>
                onChange((now) => ({ ...now, heights: now.heights.filter((_, at) => at !== index) }))
              }
            >
              {t("models.height.remove")}
            </Button>
          )}
        </fieldset>
      ))}
      <div>
        <Button
          className="button"
          onPress={() => {
            const highest = Math.max(...draft.heights.map(({ height }) => height));
            onChange((now) => ({ ...now, heights: [...now.heights, { height: highest + 0.5, cells: {} }] }));
          }}
        >
          {t("models.height.add")}
        </Button>
      </div>
    </div>
  );
}
