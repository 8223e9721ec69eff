import type { EditStep, RecordKind, RecordOf } from "../../contract.ts";

// A union over all kinds cannot be built from a generic kind without a word to the compiler; it is said here, once.

export const putStep = <K extends RecordKind>(kind: K, record: RecordOf<K>): EditStep =>
  ({ do: "put", kind, record }) as unknown as EditStep;

/** A field that is set to undefined is taken away. */
export const setStep = <K extends RecordKind>(
  kind: K,
  id: string,
  fields: { readonly [Name in keyof RecordOf<K>]?: RecordOf<K>[Name] | undefined },
): EditStep => ({ do: "set", kind, id, fields }) as unknown as EditStep;

export const removeStep = (kind: RecordKind, id: string): EditStep =>
  ({ do: "remove", kind, id }) as EditStep;
