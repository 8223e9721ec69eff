import { t } from "../texts/index.ts";
import { Pick } from "./choice.tsx";
import { FigureField } from "./measure-fields.tsx";

interface AmountProps {
  readonly label: string;
  /** In the unit of the record; undefined: not known. */
  readonly value: number | undefined;
  /** How much of the record's unit one of the shown unit is: 0.001 for mA. */
  readonly per?: number;
  readonly unit?: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  readonly disabled?: boolean;
  readonly placeholder?: string;
  readonly hint?: string | undefined;
  readonly onChange: (value: number | undefined) => void;
}

/** A figure that may be unknown, shown and typed in the unit that the label on the device has. Limits are in the shown unit. */
export function Amount({ value, per = 1, placeholder, onChange, ...rest }: AmountProps) {
  return (
    <FigureField
      {...rest}
      value={value === undefined ? undefined : rounded(value / per)}
      placeholder={placeholder ?? t("fields.unknown")}
      onChange={(shown) => onChange(rounded(shown) * per)}
      onClear={() => onChange(undefined)}
    />
  );
}

/** Nine digits: units may be changed to and fro without a tail of decimals. */
const rounded = (value: number): number => Number(value.toPrecision(9));

const nothing = "";

interface MaybeProps<T extends string> {
  readonly label: string;
  readonly value: T | undefined;
  readonly options: readonly { readonly value: T; readonly word: string }[];
  /** What stands for undefined. */
  readonly none?: string;
  readonly wide?: boolean;
  readonly onChange: (value: T | undefined) => void;
}

/** One of several, or nothing where nobody knows. */
export function Maybe<T extends string>({ value, options, none, onChange, ...rest }: MaybeProps<T>) {
  return (
    <Pick<T | typeof nothing>
      {...rest}
      value={value ?? nothing}
      options={[{ value: nothing, word: none ?? t("fields.unknown") }, ...options]}
      onChange={(next) => onChange(next === nothing ? undefined : next)}
    />
  );
}

/** Fields as the document takes them: what is undefined is left out. */
export const without = <T extends object>(fields: T): { readonly [Name in keyof T]: NonNullable<T[Name]> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    readonly [Name in keyof T]: NonNullable<T[Name]>;
  };
