import type { DraftChange, ModelDraft } from "./model-draft.ts";

export type Rest = ModelDraft["rest"];
export type Fields = { readonly [Name in keyof Rest]?: Rest[Name] | undefined };

export interface SheetWiringProps {
  readonly draft: ModelDraft;
  readonly onChange: (change: DraftChange) => void;
}

/** A change of the fields that stand in the draft as they stand in the model. */
export const setIn =
  (onChange: SheetWiringProps["onChange"]) =>
  (fields: (rest: Rest) => Fields): void =>
    onChange((now) => ({ ...now, rest: kept({ ...now.rest, ...fields(now.rest) }) }));

/** What is undefined, or holds nothing, is left out. */
const kept = <T extends object>(fields: T): Rest =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  ) as Rest;
