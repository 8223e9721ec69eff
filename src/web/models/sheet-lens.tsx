import type { Lens } from "#engine";
import { FigureField, Pick } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import { type DraftChange, type ModelDraft, withLens } from "./model-draft.ts";

interface SheetLensProps {
  readonly draft: ModelDraft;
  readonly onChange: (change: DraftChange) => void;
}

const shapes = ["unknown", "dome", "flat"] as const;
const milli = 1000;

/** The lens as far as a mask is cut for it: its shape and its size. */
export function SheetLens({ draft, onChange }: SheetLensProps) {
  const { lens } = draft.rest;
  const set = (change: Partial<Record<"radius" | "elementOffset", number | undefined>>) =>
    onChange((now) => withLens(now, change));
  const unknown = t("models.unknown");
  return (
    <>
      <Pick
        label={t("models.lens")}
        value={lens?.shape ?? "unknown"}
        options={shapes.map((value) => ({ value, word: t(`models.lens.${value}`) }))}
        onChange={(shape) =>
          onChange((now) => withLens(now, { shape: shape === "unknown" ? undefined : shape }))
        }
      />
      {lens === undefined ? null : (
        <FigureField
          label={t(lens.shape === "dome" ? "models.lens.radius" : "models.lens.distance")}
          unit="mm"
          value={inMillimetres(lens.radius)}
          placeholder={unknown}
          hint={lens.radius === undefined ? t("models.lens.why") : undefined}
          least={1}
          most={200}
          onChange={(radius) => set({ radius: radius / milli })}
          onClear={() => set({ radius: undefined })}
        />
      )}
      {lens?.shape === "dome" ? (
        <FigureField
          label={t("models.lens.offset")}
          unit="mm"
          value={inMillimetres(lens.elementOffset)}
          placeholder={unknown}
          hint={t("models.lens.offset.sign")}
          least={-100}
          most={100}
          onChange={(offset) => set({ elementOffset: offset / milli })}
          onClear={() => set({ elementOffset: undefined })}
        />
      ) : null}
    </>
  );
}

/** Whole micrometres, so that 22 mm do not come back as 21.999 999. */
const inMillimetres = (length: Lens["radius"]): number | undefined =>
  length === undefined ? undefined : Math.round(length * milli * milli) / milli;
