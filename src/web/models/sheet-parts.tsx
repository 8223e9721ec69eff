import { Pick } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import type { DraftChange, ModelDraft } from "./model-draft.ts";

const nothing = "";

export type Rest = ModelDraft["rest"];
export type Fields = { readonly [Name in keyof Rest]?: Rest[Name] | undefined };

export interface SheetWiringProps {
  readonly draft: ModelDraft;
  readonly onChange: (change: DraftChange) => void;
}

/** One of several, or nothing where the data sheet is silent. */
export function Maybe<T extends string>({
  label,
  value,
  options,
  onChange,
}: {
  readonly label: string;
  readonly value: T | undefined;
  readonly options: readonly { readonly value: T; readonly word: string }[];
  readonly onChange: (value: T | undefined) => void;
}) {
  return (
    <Pick<T | typeof nothing>
      label={label}
      value={value ?? nothing}
      options={[{ value: nothing, word: t("models.unknown") }, ...options]}
      onChange={(next) => onChange(next === nothing ? undefined : next)}
    />
  );
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

/** Without what is undefined. */
export const without = <T extends object>(fields: T): { readonly [Name in keyof T]: NonNullable<T[Name]> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    readonly [Name in keyof T]: NonNullable<T[Name]>;
  };
