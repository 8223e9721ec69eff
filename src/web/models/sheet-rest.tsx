import type { Declaration, Metres } from "#engine";
import { FigureField, LengthField, Pick, TextBox } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/models.ts";
import type { DraftChange, ModelDraft } from "./model-draft.ts";
import { SheetLens } from "./sheet-lens.tsx";

const declarations: readonly Declaration[] = ["data-sheet", "standard-test", "measured-on-site", "assumed"];

interface SheetRestProps {
  readonly draft: ModelDraft;
  readonly limits: { readonly min: Metres; readonly max: Metres };
  readonly onChange: (change: DraftChange) => void;
}

/** The rest of the data sheet; an empty field says that the figure is unknown and what is used instead. */
export function SheetRest({ draft, limits, onChange }: SheetRestProps) {
  const units = useUnits();
  const set = (change: Partial<ModelDraft>) => onChange((now) => ({ ...now, ...change }));
  const unknown = t("fields.unknown");
  return (
    <div className="fields fields-roomy">
      <p className="hint field-wide">{t("models.empty-fields")}</p>
      <LengthField
        label={t("models.lowest")}
        value={draft.lowest}
        placeholder={unknown}
        hint={
          draft.lowest === undefined
            ? t("models.limit.assumed", { height: lengthText(limits.min, units) })
            : undefined
        }
        least={1}
        most={30}
        onChange={(lowest) => set({ lowest })}
        onClear={() => set({ lowest: undefined })}
      />
      <LengthField
        label={t("models.highest")}
        value={draft.highest}
        placeholder={unknown}
        hint={
          draft.highest === undefined
            ? t("models.limit.assumed", { height: lengthText(limits.max, units) })
            : undefined
        }
        least={1}
        most={30}
        onChange={(highest) => set({ highest })}
        onClear={() => set({ highest: undefined })}
      />
      <Pick
        label={t("models.declaration")}
        value={draft.declaration}
        options={declarations.map((value) => ({ value, word: t(`models.declaration.${value}`) }))}
        onChange={(declaration) => set({ declaration })}
      />
      <TextBox
        label={t("models.declared-by")}
        value={draft.declaredBy}
        placeholder={unknown}
        onChange={(declaredBy) => set({ declaredBy })}
      />
      <LengthField
        label={t("models.onset")}
        value={draft.onset}
        placeholder={unknown}
        hint={draft.onset === undefined ? t("models.follows-job") : undefined}
        least={0.05}
        most={5}
        onChange={(onset) => set({ onset })}
        onClear={() => set({ onset: undefined })}
      />
      <FigureField
        label={t("models.response")}
        unit="s"
        value={draft.response}
        placeholder={unknown}
        hint={draft.response === undefined ? t("models.follows-job") : undefined}
        least={0}
        most={60}
        onChange={(response) => set({ response })}
        onClear={() => set({ response: undefined })}
      />
      <FigureField
        label={t("models.warm-up")}
        unit="s"
        value={draft.warmUp}
        placeholder={unknown}
        least={0}
        most={3600}
        onChange={(warmUp) => set({ warmUp })}
        onClear={() => set({ warmUp: undefined })}
      />
      <LengthField
        label={t("models.cut-out")}
        of="part"
        value={draft.cutOut}
        placeholder={unknown}
        least={0.01}
        most={0.5}
        onChange={(cutOut) => set({ cutOut })}
        onClear={() => set({ cutOut: undefined })}
      />
      <SheetLens draft={draft} onChange={onChange} />
      <TextBox
        label={t("models.delivery-state")}
        value={draft.deliveryState}
        placeholder={unknown}
        wide
        onChange={(deliveryState) => set({ deliveryState })}
      />
    </div>
  );
}
