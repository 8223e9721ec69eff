import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { type Point, radiansOf } from "#engine";
import type { OpenJob, RecordRef } from "../contract.ts";
import { AngleField, FigureField, LengthField, More } from "../fields/index.ts";
import { rowStep } from "../plan/edit/beside.ts";
import { wholeOf } from "../plan/edit/selected.ts";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";

interface EditDeedsProps {
  readonly job: OpenJob;
  readonly refs: readonly RecordRef[];
  readonly actions: Actions;
  readonly store: Store<Workbench>;
}

/** What one may do to one thing or to many: a second one, or away with it; and, folded away, all that is rarer. */
export function EditDeeds({ job, refs, actions, store }: EditDeedsProps) {
  const rooms = refs.filter(({ kind }) => kind === "rooms");
  return (
    <>
      {rooms.length > 1 ? (
        <Button className="button button-first wide-button" onPress={actions.join}>
          {t("edit.join")}
        </Button>
      ) : null}
      <div className="row card-deeds">
        <Button className="button button-quiet" onPress={actions.duplicate}>
          {t("card.duplicate")}
        </Button>
        <Button className="button button-quiet" onPress={actions.remove}>
          {t("card.remove")}
        </Button>
      </div>
      <More word={t("edit.arrange")}>
        <div className="stack">
          <div className="survey-panels">
            <Button className="button" onPress={() => actions.mirror("across")}>
              {t("edit.mirror.across")}
            </Button>
            <Button className="button" onPress={() => actions.mirror("up")}>
              {t("edit.mirror.up")}
            </Button>
            <Button className="button" onPress={() => actions.rotate(Math.PI / 2)}>
              {t("edit.quarter")}
            </Button>
            {refs.every(({ kind }) => kind === refs[0]?.kind) ? (
              <Button className="button" onPress={actions.selectAlike}>
                {t("edit.alike")}
              </Button>
            ) : null}
            <CopyButtons actions={actions} />
          </div>
          <ByFigures actions={actions} />
          <InARow
            key={refs.map(({ id }) => id).join()}
            job={job}
            refs={refs}
            actions={actions}
            store={store}
          />
        </div>
      </More>
    </>
  );
}

/** Moving and turning by typed figures; the fields are back at nothing afterwards. */
function ByFigures({ actions }: Pick<EditDeedsProps, "actions">) {
  return (
    <fieldset className="plain-set stack">
      <legend className="set-head">{t("edit.by")}</legend>
      <div className="fields">
        <LengthField label={t("card.x")} value={0} onChange={(x) => x !== 0 && actions.moveBy([x, 0])} />
        <LengthField label={t("card.y")} value={0} onChange={(y) => y !== 0 && actions.moveBy([0, y])} />
        <AngleField
          label={t("card.turn")}
          value={0}
          least={radiansOf(-360)}
          most={radiansOf(360)}
          onChange={(by) => by !== 0 && actions.rotate(by)}
        />
      </div>
    </fieldset>
  );
}

/** A row of copies: it shows on the plan while its figures are typed, and Enter makes it. */
function InARow({ job, refs, actions, store }: EditDeedsProps) {
  const [count, setCount] = useState(3);
  const [across, setAcross] = useState(() => rowStep(job.site, wholeOf(job.site, refs)));
  const [up, setUp] = useState(0);
  const by: Point = [across, up];
  const [watched, setWatched] = useState(false);
  const isRow = across !== 0 || up !== 0;
  useEffect(() => {
    if (!watched || !isRow) return;
    store.set({ planned: { kind: "row", count, by: [across, up] } });
    return () => store.set({ planned: undefined });
  }, [watched, isRow, count, across, up, store]);
  const make = (): void => {
    if (isRow) actions.row({ count, by });
  };
  return (
    <fieldset
      className="plain-set stack"
      onFocus={() => setWatched(true)}
      onBlur={({ relatedTarget, currentTarget }) => {
        // The plan may be touched meanwhile; another part of the card means something else.
        if (relatedTarget?.closest(".card") && !currentTarget.contains(relatedTarget)) setWatched(false);
      }}
    >
      <legend className="set-head">{t("edit.row")}</legend>
      <div className="fields">
        <FigureField
          label={t("edit.row.count")}
          value={count}
          least={1}
          most={200}
          whole
          when="typing"
          onChange={setCount}
          onEnter={make}
        />
        <LengthField label={t("card.x")} value={across} when="typing" onChange={setAcross} onEnter={make} />
        <LengthField label={t("card.y")} value={up} when="typing" onChange={setUp} onEnter={make} />
      </div>
      <Button className="button wide-button" isDisabled={!isRow} onPress={make}>
        {t("edit.row.make", { count })}
      </Button>
    </fieldset>
  );
}

/** Copy and cut for hands without a keyboard. */
function CopyButtons({ actions }: Pick<EditDeedsProps, "actions">) {
  const copy = async (): Promise<boolean> => {
    try {
      await navigator.clipboard.writeText(actions.clip());
      actions.say(t("edit.copied"));
      return true;
    } catch {
      actions.say(t("edit.copy.refused"));
      return false;
    }
  };
  return (
    <>
      <Button className="button" onPress={() => void copy()}>
        {t("edit.copy")}
      </Button>
      <Button className="button" onPress={() => void copy().then((done) => done && actions.remove())}>
        {t("edit.cut")}
      </Button>
    </>
  );
}
