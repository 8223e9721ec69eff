import type { Point } from "#engine";
import type { EditStep, RecordRef } from "../contract.ts";
import { moveSteps, removeSteps } from "../plan/change.ts";
import { besideBy } from "../plan/edit/beside.ts";
import { clipText, pasteSteps, readClip } from "../plan/edit/clip.ts";
import { type Copied, copySteps, nextElevation, rowSteps, storeyCopySteps } from "../plan/edit/copied.ts";
import { mirrorSteps, rotateSteps } from "../plan/edit/motion.ts";
import { type MirrorWay, shiftBy } from "../plan/edit/plan-map.ts";
import { alike, wholeOf } from "../plan/edit/selected.ts";
import { putStep, removeStep } from "../plan/edit/steps.ts";
import { rest } from "../plan/tools/state.ts";
import { t } from "../texts/index.ts";
import type { Store, Workbench } from "./workbench.ts";

/** What one may do to a selection and to whole storeys beyond moving and turning; each is one step of undo. */
export interface EditActions {
  readonly selectAlike: () => void;
  readonly duplicate: () => void;
  readonly remove: () => void;
  readonly moveBy: (by: Point) => void;
  readonly mirror: (way: MirrorWay) => void;
  readonly rotate: (by: number) => void;
  readonly row: (row: { readonly count: number; readonly by: Point }) => void;
  readonly join: () => void;
  /** The selection as text for the clipboard; empty where nothing is selected. */
  readonly clip: () => string;
  /** Sets down what a text of the clipboard holds, with its middle at a place. */
  readonly paste: (text: string, at: Point) => void;
  readonly addStorey: () => void;
  readonly copyStorey: (id: string) => void;
  readonly removeStorey: (id: string) => void;
  /** Says a sentence to the person until it is closed or something else is done. */
  readonly say: (sentence: string | undefined) => void;
}

interface Ports {
  readonly select: (refs: readonly RecordRef[]) => void;
  readonly goTo: (storey: string) => void;
}

export function editActionsOn(store: Store<Workbench>, { select, goTo }: Ports): EditActions {
  const edit = (name: string, steps: readonly EditStep[]): boolean => {
    const { job } = store.get();
    if (job.readOnly || steps.length === 0) return false;
    store.set({ notice: undefined });
    job.edit(name, steps);
    return true;
  };
  const onSelection = (name: string, make: (bench: Workbench) => readonly EditStep[]): boolean =>
    edit(name, make(store.get()));
  const made = (name: string, copied: Copied): void => {
    if (!edit(name, copied.steps)) return;
    store.set({ tool: { kind: "select" }, toolState: rest });
    select(copied.made);
  };
  const say = (notice: string | undefined): void => store.set({ notice });
  const newStorey = (name: string, storey: string, steps: readonly EditStep[]): void => {
    if (edit(name, steps)) goTo(storey);
  };
  return {
    selectAlike: () => {
      const { job, storey, selection } = store.get();
      if (selection[0]) select(alike(job.site, storey, selection[0]));
    },
    duplicate: () => {
      const { job, selection } = store.get();
      const by = besideBy(job.site, wholeOf(job.site, selection));
      made("plan.edit.duplicate", copySteps(job.site, selection, { map: shiftBy(by), newId: job.newId }));
    },
    remove: () => {
      if (onSelection("plan.edit.remove", ({ job, selection }) => removeSteps(job.site, selection)))
        store.set({ selection: [] });
    },
    moveBy: (by) => onSelection("plan.edit.move", ({ job, selection }) => moveSteps(job.site, selection, by)),
    mirror: (way) =>
      onSelection("plan.edit.mirror", ({ job, selection }) => mirrorSteps(job.site, selection, way)),
    rotate: (by) =>
      onSelection("plan.edit.turn", ({ job, selection }) => rotateSteps(job.site, selection, by)),
    row: (row) => {
      const { job, selection } = store.get();
      made("plan.edit.row", rowSteps(job.site, selection, { ...row, newId: job.newId }));
    },
    join: () => {
      // Booleans of outlines are large: they load when somebody joins.
      void import("../plan/edit/join-rooms.ts").then(({ joinRooms }) => {
        const { job, selection } = store.get();
        const rooms = selection.filter(({ kind }) => kind === "rooms").map(({ id }) => id);
        const joined = joinRooms(job.site, rooms);
        if ("refused" in joined) say(t(`edit.join.${joined.refused}`));
        else if (edit("plan.edit.join", joined.steps)) select([{ kind: "rooms", id: joined.room }]);
      });
    },
    clip: () => clipText(store.get().job.site, store.get().selection),
    paste: (text, at) => {
      const { job, storey } = store.get();
      if (job.readOnly) return;
      const read = readClip(text);
      if ("refused" in read) return say(t(`edit.paste.${read.refused}`));
      const pasted = pasteSteps(job.site, read.clip, { at, storey, newId: job.newId });
      if ("refused" in pasted) say(t(`edit.paste.${pasted.refused}`));
      else made("plan.edit.paste", pasted);
    },
    addStorey: () => {
      const { job } = store.get();
      const record = {
        id: job.newId("storeys"),
        name: t("edit.storey.new"),
        elevation: nextElevation(job.site),
      };
      newStorey("plan.edit.storey", record.id, [putStep("storeys", record)]);
    },
    copyStorey: (id) => {
      const { job } = store.get();
      const name = job.site.storeys.find((one) => one.id === id)?.name ?? "";
      const copy = storeyCopySteps(job.site, id, {
        name: t("edit.storey.copy-of", { name }),
        elevation: nextElevation(job.site),
        newId: job.newId,
      });
      newStorey("plan.edit.storey", copy.storey, copy.steps);
    },
    removeStorey: (id) => {
      const { job } = store.get();
      const next = job.site.storeys.find((one) => one.id !== id);
      if (!next || job.readOnly) return;
      goTo(next.id);
      edit("plan.edit.storey", [removeStep("storeys", id)]);
    },
    say,
  };
}
