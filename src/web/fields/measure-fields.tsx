import type { Metres, Radians } from "#engine";
import { degreesOf, radiansOf } from "#engine";
import { useUnits } from "../settings/preferences.ts";
import {
  figureIn,
  lengthFigure,
  lengthIn,
  lengthText,
  numberText,
  smallLengthFigure,
  smallLengthIn,
  smallLengthText,
  t,
} from "../texts/index.ts";
import { DraftField, type DraftFieldProps, type Reading } from "./draft-field.tsx";

type Common = Pick<
  DraftFieldProps<never>,
  "label" | "hint" | "when" | "onEnter" | "disabled" | "wide" | "placeholder" | "suggestions"
>;

export interface LengthFieldProps extends Common {
  /** Undefined: not known, the field stays empty. */
  readonly value: Metres | undefined;
  readonly onChange: (value: Metres) => void;
  /** Called when the field is emptied; without it an empty field is an error. */
  readonly onClear?: () => void;
  /** Called with the length that is typed so far; with undefined while it is none, or is done or dropped. */
  readonly onDraft?: (value: Metres | undefined) => void;
  readonly least?: Metres;
  readonly most?: Metres;
  /** What it measures: a room, or a part of some millimetres, as data sheets give it. */
  readonly of?: "room" | "part";
}

const ways = {
  room: { unit: "m", figure: lengthFigure, text: lengthText, read: lengthIn },
  part: { unit: "mm", figure: smallLengthFigure, text: smallLengthText, read: smallLengthIn },
} as const;

/** A length, shown and read in the person's units; any unit that is typed is understood. */
export function LengthField({
  value,
  onChange,
  onClear,
  least,
  most,
  of = "room",
  ...rest
}: LengthFieldProps) {
  const units = useUnits();
  const way = ways[of];
  const read = (typed: string): Reading<Metres | undefined> => {
    if (typed.trim() === "" && onClear !== undefined) return { value: undefined };
    const length = way.read(typed, units);
    if (length === undefined)
      return {
        trouble: t(units === "metric" ? "fields.length.unreadable" : "fields.length.unreadable-feet"),
      };
    if (least !== undefined && length < least - 1e-9)
      return { trouble: t("fields.too-small", { least: way.text(least, units) }) };
    if (most !== undefined && length > most + 1e-9)
      return { trouble: t("fields.too-large", { most: way.text(most, units) }) };
    return { value: length };
  };
  return (
    <DraftField<Metres | undefined>
      {...rest}
      shown={value === undefined ? "" : way.figure(value, units)}
      read={read}
      onChange={(length) => (length === undefined ? onClear?.() : onChange(length))}
      inputMode={units === "metric" ? "decimal" : "text"}
      {...(units === "metric" ? { unit: way.unit } : {})}
    />
  );
}

export interface FigureFieldProps extends Common {
  readonly value: number | undefined;
  readonly onChange: (value: number) => void;
  readonly onClear?: () => void;
  readonly unit?: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** A number with its unit beside it; another unit of the same kind that is typed is understood. */
export function FigureField({
  value,
  onChange,
  onClear,
  least,
  most,
  whole,
  unit,
  ...rest
}: FigureFieldProps) {
  const read = (typed: string): Reading<number | undefined> => {
    if (typed.trim() === "" && onClear !== undefined) return { value: undefined };
    const figure = figureIn(typed, unit);
    if (figure === undefined || (whole === true && !Number.isInteger(figure)))
      return { trouble: t(whole === true ? "fields.whole.unreadable" : "fields.figure.unreadable") };
    if (least !== undefined && figure < least)
      return { trouble: t("fields.too-small", { least: withUnit(least, unit) }) };
    if (most !== undefined && figure > most)
      return { trouble: t("fields.too-large", { most: withUnit(most, unit) }) };
    return { value: figure };
  };
  return (
    <DraftField
      {...rest}
      shown={value === undefined ? "" : numberText(value).replaceAll(",", "")}
      read={read}
      onChange={(figure) => (figure === undefined ? onClear?.() : onChange(figure))}
      inputMode="decimal"
      {...(unit === undefined ? {} : { unit })}
    />
  );
}

export interface AngleFieldProps extends Common {
  readonly value: Radians;
  readonly onChange: (value: Radians) => void;
  readonly least?: Radians;
  readonly most?: Radians;
}

/** An angle, typed in degrees, kept in radians. */
export function AngleField({ value, onChange, least, most, ...rest }: AngleFieldProps) {
  return (
    <FigureField
      {...rest}
      value={Math.round(degreesOf(value) * 10) / 10}
      onChange={(degrees) => onChange(radiansOf(degrees))}
      unit="°"
      {...(least === undefined ? {} : { least: degreesOf(least) })}
      {...(most === undefined ? {} : { most: degreesOf(most) })}
    />
  );
}

export interface TextBoxProps extends Common {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** May not be left empty. */
  readonly needed?: boolean;
}

/** A line of plain text. */
export function TextBox({ value, onChange, needed, ...rest }: TextBoxProps) {
  const read = (typed: string): Reading<string> =>
    needed === true && typed.trim() === "" ? { trouble: t("fields.needed") } : { value: typed.trim() };
  return <DraftField {...rest} shown={value} read={read} onChange={onChange} />;
}

const withUnit = (figure: number, unit: string | undefined): string =>
  unit === undefined
    ? numberText(figure)
    : unit === "°"
      ? `${numberText(figure)}°`
      : `${numberText(figure)} ${unit}`;
