import { ListBox, ListBoxItem } from "react-aria-components";
import { useUnits } from "../settings/preferences.ts";
import { type Actions, thingsOn } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";
import { spokenOf } from "./names.ts";

interface ThingsListProps {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  /** Moves the keyboard into the plan, where arrow keys move the chosen thing. */
  readonly onPlan: () => void;
}

/** The plan as a list, for the keyboard and for those who do not see the drawing; shown while it has the focus. */
export function ThingsList({ store, actions, onPlan }: ThingsListProps) {
  const units = useUnits();
  const { job, storey, selection } = usePart(store, (bench) => ({
    job: bench.job,
    storey: bench.storey,
    selection: bench.selection,
  }));
  const things = thingsOn(job.site, storey);
  return (
    <div className="things no-print">
      <ListBox
        className="things-list"
        aria-label={t("plan.list")}
        selectionMode="multiple"
        selectionBehavior="replace"
        selectedKeys={selection.map(({ kind, id }) => `${kind} ${id}`)}
        onSelectionChange={(keys) => {
          if (keys === "all") return;
          const chosen = new Set([...keys].map(String));
          actions.select(things.filter(({ kind, id }) => chosen.has(`${kind} ${id}`)));
        }}
        onAction={onPlan}
        items={things.map((ref) => ({ ...ref, key: `${ref.kind} ${ref.id}` }))}
        renderEmptyState={() => <p className="hint">{t("plan.list.empty")}</p>}
      >
        {(ref) => {
          const spoken = spokenOf(job.site, ref, units);
          return (
            <ListBoxItem id={ref.key} textValue={spoken} className="things-item">
              {spoken}
            </ListBoxItem>
          );
        }}
      </ListBox>
    </div>
  );
}
