import { type ReactNode, useState } from "react";
import { FieldError, Input, Label, Text, TextField } from "react-aria-components";
import "./fields.css";

/** What typed text came to: a value, or a sentence that says what was wrong. */
export type Reading<T> = { readonly value: T } | { readonly trouble: string };

export interface DraftFieldProps<T> {
  readonly label: string;
  /** The value as it stands in the field while nobody types. */
  readonly shown: string;
  readonly read: (typed: string) => Reading<T>;
  readonly onChange: (value: T) => void;
  /** Called with what is typed so far, while it can be read; with undefined when it cannot, or is done or dropped. */
  readonly onDraft?: ((value: T | undefined) => void) | undefined;
  /** Enter was pressed on what can be read. */
  readonly onEnter?: (() => void) | undefined;
  /** "typing": with every readable key; "done": on leaving the field or Enter, one step of undo. */
  readonly when?: "typing" | "done";
  readonly unit?: string;
  readonly hint?: ReactNode;
  readonly placeholder?: string;
  readonly inputMode?: "text" | "decimal" | "numeric";
  /** Id of a list of words that the field offers. */
  readonly suggestions?: string;
  readonly disabled?: boolean;
  readonly wide?: boolean;
}

/** A field that lets one type freely and says at the end what it could not read; the typed text stays to be mended. */
export function DraftField<T>(props: DraftFieldProps<T>) {
  const [draft, setDraft] = useState<string | undefined>();
  const reading = draft === undefined ? undefined : props.read(draft);
  const [left, setLeft] = useState(false);
  const trouble = left && reading !== undefined && "trouble" in reading ? reading.trouble : undefined;
  const finish = (): boolean => {
    setLeft(true);
    if (reading === undefined) return true;
    if ("trouble" in reading) return false;
    props.onDraft?.(undefined);
    if (props.when !== "typing") props.onChange(reading.value);
    setDraft(undefined);
    return true;
  };
  return (
    <TextField
      className={props.wide === true ? "field field-wide" : "field"}
      value={draft ?? props.shown}
      onChange={(typed) => {
        setLeft(false);
        setDraft(typed);
        const now = props.read(typed);
        props.onDraft?.("value" in now ? now.value : undefined);
        if (props.when === "typing" && "value" in now) props.onChange(now.value);
      }}
      onBlur={finish}
      onKeyDown={(event) => {
        if (event.key === "Enter" && finish()) props.onEnter?.();
        if (event.key === "Escape" && draft !== undefined) {
          setDraft(undefined);
          props.onDraft?.(undefined);
        } else event.continuePropagation();
      }}
      isInvalid={trouble !== undefined}
      isDisabled={props.disabled === true}
    >
      <Label className="field-label">{props.label}</Label>
      <span className="field-box">
        <Input
          className="field-input"
          inputMode={props.inputMode ?? "text"}
          autoComplete="off"
          {...(props.placeholder === undefined ? {} : { placeholder: props.placeholder })}
          {...(props.suggestions === undefined ? {} : { list: props.suggestions })}
        />
        {props.unit === undefined ? null : <span className="field-unit">{props.unit}</span>}
      </span>
      {props.hint === undefined ? null : (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      )}
      <FieldError className="field-trouble">{trouble}</FieldError>
    </TextField>
  );
}
