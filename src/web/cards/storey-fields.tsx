import { Button } from "react-aria-components";
import type { OpenJob } from "../contract.ts";
import { LengthField, More, TextBox } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { t } from "../texts/index.ts";
import { setFields } from "./edits.ts";

interface StoreyFieldsProps {
  readonly job: OpenJob;
  readonly storey: string;
  readonly actions: Actions;
  /** In the middle of what one sees. */
  readonly onPaste: () => void;
}

/** The storey itself: name and height, a copy of it, another one, and what the clipboard holds. */
export function StoreyFields({ job, storey: id, actions, onPaste }: StoreyFieldsProps) {
  const storey = job.site.storeys.find((one) => one.id === id);
  if (!storey || job.readOnly) return null;
  const set = (fields: Partial<typeof storey>): void => setFields(job, { kind: "storeys", id }, fields);
  return (
    <More word={t("edit.storey")}>
      <div className="stack">
        <div className="fields">
          <TextBox label={t("card.name")} value={storey.name} needed onChange={(name) => set({ name })} />
          <LengthField
            label={t("edit.storey.elevation")}
            value={storey.elevation}
            least={-500}
            most={2000}
            onChange={(elevation) => set({ elevation })}
          />
        </div>
        <div className="survey-panels">
          <Button className="button" onPress={() => actions.copyStorey(id)}>
            {t("edit.storey.copy")}
          </Button>
          <Button className="button" onPress={actions.addStorey}>
            {t("edit.storey.add")}
          </Button>
          <Button className="button" onPress={actions.selectAll}>
            {t("edit.all")}
          </Button>
          <Button className="button" onPress={onPaste}>
            {t("edit.paste")}
          </Button>
        </div>
        {job.site.storeys.length > 1 ? (
          <Button className="button button-quiet" onPress={() => actions.removeStorey(id)}>
            {t("edit.storey.remove")}
          </Button>
        ) : null}
      </div>
    </More>
  );
}
