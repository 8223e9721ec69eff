import type { EditStep, OpenJob, RecordKind, RecordOf } from "../contract.ts";

/** Sets fields of one record as one step of undo. */
export const setFields = <K extends RecordKind>(
  job: OpenJob,
  of: { readonly kind: K; readonly id: string },
  fields: Partial<RecordOf<K>>,
): void =>
  job.edit("plan.edit.change", [{ do: "set", kind: of.kind, id: of.id, fields } as unknown as EditStep]);
