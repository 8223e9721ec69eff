import { LengthField, Maybe } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import { withLens } from "./model-draft.ts";
import type { SheetWiringProps } from "./sheet-parts.tsx";

/** The lens as far as a mask is cut for it: its shape and its size. */
export function SheetLens({ draft, onChange }: SheetWiringProps) {
  const { lens } = draft.rest;
  const set = (change: Parameters<typeof withLens>[1]): void => onChange((now) => withLens(now, change));
  const unknown = t("fields.unknown");
  return (
    <>
      <Maybe
        label={t("models.lens")}
        value={lens?.shape}
        options={(["dome", "flat"] as const).map((value) => ({ value, word: t(`models.lens.${value}`) }))}
        onChange={(shape) => set({ shape })}
      />
      {lens === undefined ? null : (
        <LengthField
          label={t(lens.shape === "dome" ? "models.lens.radius" : "models.lens.distance")}
          of="part"
          value={lens.radius}
          placeholder={unknown}
          hint={lens.radius === undefined ? t("models.lens.why") : undefined}
          least={0.001}
          most={0.2}
          onChange={(radius) => set({ radius })}
          onClear={() => set({ radius: undefined })}
        />
      )}
      {lens?.shape === "dome" ? (
        <LengthField
          label={t("models.lens.offset")}
          of="part"
          value={lens.elementOffset}
          placeholder={unknown}
          hint={t("models.lens.offset.sign")}
          least={-0.1}
          most={0.1}
          onChange={(elementOffset) => set({ elementOffset })}
          onClear={() => set({ elementOffset: undefined })}
        />
      ) : null}
    </>
  );
}
