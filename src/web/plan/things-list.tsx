import { type KeyboardEvent, memo, useDeferredValue } from "react";
import type { Site } from "#engine";
import type { RecordRef } from "../contract.ts";
import { useUnits } from "../settings/preferences.ts";
import { type Actions, thingsOn } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t, type Units } from "../texts/index.ts";
import { spokenOf } from "./names.ts";
import { sameRef } from "./pick.ts";

interface ThingsListProps {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  /** Moves the keyboard into the plan, where arrow keys move the chosen thing. */
  readonly onPlan: () => void;
}

/** The plan as a list, for the keyboard and for those who do not see the drawing; shown while it has the focus. */
export const ThingsList = memo(function ThingsList({ store, actions, onPlan }: ThingsListProps) {
  const units = useUnits();
  // A long list may come a moment later than the drawing: the hand goes first.
  const { job, storey, selection } = useDeferredValue(
    usePart(store, (bench) => ({ job: bench.job, storey: bench.storey, selection: bench.selection })),
  );
  const things = thingsOn(job.site, storey);
  const at = things.findIndex((ref) => sameRef(ref, selection[0]));
  const go = (index: number): void => {
    const ref = things[Math.min(things.length - 1, Math.max(0, index))];
    if (ref) actions.select([ref]);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "ArrowDown") go(at + 1);
    else if (event.key === "ArrowUp") go(at - 1);
    else if (event.key === "Home") go(0);
    else if (event.key === "End") go(things.length - 1);
    else if (event.key === "Enter") onPlan();
    else return;
    event.preventDefault();
  };
  // A list with nothing to choose from is none.
  if (things.length === 0)
    return (
      <section className="things no-print" aria-label={t("plan.list")}>
        <p className="hint">{t("plan.list.empty")}</p>
      </section>
    );
  return (
    <section className="things no-print" aria-label={t("plan.list")}>
      <div
        className="things-list"
        role="listbox"
        tabIndex={0}
        aria-label={t("plan.list")}
        aria-activedescendant={at < 0 ? undefined : `thing-${things[at]?.id}`}
        onKeyDown={onKeyDown}
      >
        {things.map((ref) => (
          <Thing
            key={`${ref.kind} ${ref.id}`}
            of={ref}
            site={job.site}
            units={units}
            chosen={selection.some((one) => sameRef(one, ref))}
            onChoose={actions.select}
          />
        ))}
      </div>
    </section>
  );
});

interface ThingProps {
  readonly of: RecordRef;
  readonly site: Site;
  readonly units: Units;
  readonly chosen: boolean;
  readonly onChoose: (refs: readonly RecordRef[]) => void;
}

const Thing = memo(
  function Thing({ of, site, units, chosen, onChoose }: ThingProps) {
    return (
      // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the focus and the keys
      // biome-ignore lint/a11y/useFocusableInteractive: the list points at its active option
      <div
        id={`thing-${of.id}`}
        role="option"
        aria-selected={chosen}
        className="things-item"
        ref={(element) => {
          if (chosen && element?.closest(":focus-within")) element.scrollIntoView({ block: "nearest" });
        }}
        onClick={() => onChoose([{ kind: of.kind, id: of.id }])}
      >
        {spokenOf(site, of, units)}
      </div>
    );
  },
  (a, b) =>
    a.chosen === b.chosen &&
    a.units === b.units &&
    sameRef(a.of, b.of) &&
    a.site.rooms === b.site.rooms &&
    a.site[a.of.kind] === b.site[b.of.kind],
);
