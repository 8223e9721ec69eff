import type { OpenJob, RecordKind } from "../contract.ts";
import { type FieldsOf, setStep } from "../plan/edit/steps.ts";

/** Sets fields of one record as one step of undo. */
export const setFields = <K extends RecordKind>(
  job: OpenJob,
  of: { readonly kind: K; readonly id: string },
  fields: FieldsOf<K>,
): void => job.edit("plan.edit.change", [setStep(of.kind, of.id, fields)]);
