import { FigureField, Pick } from "../fields/index.ts";
import { t } from "../texts/wire.ts";

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
  readonly hint?: string;
  readonly onChange: (value: number | undefined) => void;
}

/** A figure that may be unknown, shown and typed in the unit that the label on the device has. Limits are in the shown unit. */
export function Amount({ value, per = 1, placeholder, onChange, ...rest }: AmountProps) {
  return (
    <FigureField
      {...rest}
      value={value === undefined ? undefined : rounded(value / per)}
      placeholder={placeholder ?? t("wire.unknown")}
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
  readonly onChange: (value: T | undefined) => void;
}

/** One of several, or nothing where nobody knows. */
export function Maybe<T extends string>({ label, value, options, none, onChange }: MaybeProps<T>) {
  return (
    <Pick<T | typeof nothing>
      label={label}
      value={value ?? nothing}
      options={[{ value: nothing, word: none ?? t("wire.unknown") }, ...options]}
      onChange={(next) => onChange(next === nothing ? undefined : next)}
    />
  );
}

interface KnownProps {
  readonly label: string;
  readonly value: "yes" | "no" | "unknown" | undefined;
  readonly onChange: (value: "yes" | "no" | undefined) => void;
}

/** Yes or no, or nothing where nobody knows; on record as unknown it is the same as not on record. */
export function Known({ label, value, onChange }: KnownProps) {
  return (
    <Maybe
      label={label}
      value={value === "unknown" ? undefined : value}
      options={(["yes", "no"] as const).map((word) => ({ value: word, word: t(`wire.known.${word}`) }))}
      onChange={onChange}
    />
  );
}

/** Fields as the document takes them: what is undefined is left out. */
export const without = <T extends object>(fields: T): T =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;
