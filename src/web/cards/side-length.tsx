import { useEffect } from "react";
import type { Metres, Room } from "#engine";
import type { OpenJob } from "../contract.ts";
import { LengthField, Pick } from "../fields/index.ts";
import { sideLengthSteps } from "../plan/edit/side-length.ts";
import { sidesOf } from "../plan/edit/sides.ts";
import { useUnits } from "../settings/preferences.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/arrange.ts";
import { lengthText } from "../texts/index.ts";

interface SideLengthProps {
  readonly job: OpenJob;
  readonly room: Room;
  readonly store: Store<Workbench>;
}

/** One side of a room, chosen here or on the plan, and its length: typing one moves the wall beside it. */
export function SideLength({ job, room, store }: SideLengthProps) {
  const units = useUnits();
  const index = usePart(store, ({ side }) => (side?.room === room.id ? side.index : undefined));
  const sides = sidesOf(room);
  const side = index === undefined ? undefined : sides[index];
  const choose = (next: number): void => store.set({ side: { room: room.id, index: next } });
  /** What the length that is being typed would do shows on the plan. */
  const show = (length: Metres | undefined): void => {
    const made =
      side && length !== undefined && sideLengthSteps(job.site, room, { index: side.index, length });
    const steps = made && "steps" in made ? made.steps : [];
    store.set({ planned: steps.length === 0 ? undefined : { kind: "steps", steps } });
  };
  useEffect(() => () => store.set({ planned: undefined }), [store]);
  const set = (length: Metres): void => {
    if (!side) return;
    const made = sideLengthSteps(job.site, room, { index: side.index, length });
    if ("refused" in made) {
      store.set({ notice: t(`side.${made.refused}`) });
      return;
    }
    if (made.steps.length > 0) job.edit("plan.edit.reshape", made.steps);
    store.set({ notice: undefined, side: { room: room.id, index: made.index } });
  };
  return (
    <>
      <Pick
        label={t("side.choose")}
        value={side ? String(side.index) : ""}
        options={[
          ...(side ? [] : [{ value: "", word: t("side.none") }]),
          ...sides.map((one) => ({
            value: String(one.index),
            word: t(`side.${one.towards}`, {
              number: one.index + 1,
              length: lengthText(one.length, units),
            }),
          })),
        ]}
        onChange={(next) => next !== "" && choose(Number(next))}
        wide
      />
      {side ? (
        <div data-side-length="">
          <LengthField
            key={side.index}
            label={t("side.length", { number: side.index + 1 })}
            value={side.length}
            least={0.1}
            most={1000}
            onDraft={show}
            onChange={set}
          />
        </div>
      ) : null}
    </>
  );
}
