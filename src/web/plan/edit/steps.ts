import type { EditStep, RecordKind, RecordOf } from "../../contract.ts";

// A union over all kinds cannot be built from a generic kind without a word to the compiler; it is said here, once.

export const putStep = <K extends RecordKind>(kind: K, record: RecordOf<K>): EditStep =>
  ({ do: "put", kind, record }) as unknown as EditStep;

/** Fields of a record that are set; one that is set to undefined is taken away. */
export type FieldsOf<K extends RecordKind> = {
  readonly [Name in keyof RecordOf<K>]?: RecordOf<K>[Name] | undefined;
};

export const setStep = <K extends RecordKind>(kind: K, id: string, fields: FieldsOf<K>): EditStep =>
  ({ do: "set", kind, id, fields }) as unknown as EditStep;

export const removeStep = (kind: RecordKind, id: string): EditStep =>
  ({ do: "remove", kind, id }) as EditStep;
