import { type KeyboardEvent, useRef, useState } from "react";
import { t } from "../../texts/rooms.ts";
import type { CellContext, Column } from "./columns.ts";

interface CellFieldProps {
  readonly column: Column;
  readonly context: CellContext;
  /** What the field begins with. */
  readonly start: string;
  readonly wrong: boolean;
  /** The typed value, and where the keyboard goes on: rows down, columns right. */
  readonly onDone: (typed: string, move: readonly [number, number] | "left") => void;
  readonly onBack: () => void;
}

/** The field in a cell: Enter goes on below, Tab to the right, Escape takes back what was typed. */
export function CellField({ column, context, start, wrong, onDone, onBack }: CellFieldProps) {
  const options = column.options?.(context);
  const [typed, setTyped] = useState(() => startOf(start, options));
  /** Letters that choose an option: the one that opened the field, and those typed since. */
  const letters = useRef(options?.some(({ word }) => word === start) ? "" : start.toLowerCase());
  const choose = (key: string): void => {
    const begins = (text: string) => options?.find(({ word }) => word.toLowerCase().startsWith(text));
    const more = letters.current + key.toLowerCase();
    letters.current = begins(more) ? more : key.toLowerCase();
    const found = begins(letters.current);
    if (found) setTyped(found.value);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    event.stopPropagation();
    const back = event.shiftKey ? -1 : 1;
    const vertical = options ? undefined : { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (event.key === "Enter") onDone(typed, [back, 0]);
    else if (event.key === "Tab") onDone(typed, [0, back]);
    else if (vertical !== undefined) onDone(typed, [vertical, 0]);
    else if (event.key === "Escape") onBack();
    else if (options && /^\S$/u.test(event.key) && !event.ctrlKey && !event.metaKey) choose(event.key);
    else return;
    event.preventDefault();
  };
  const common = {
    className: "rooms-field",
    "aria-label": t(`rooms.column.${column.key}`),
    "aria-invalid": wrong,
    value: typed,
    onKeyDown,
    onBlur: () => onDone(typed, "left"),
  } as const;
  if (options)
    return (
      <select {...common} ref={takeFocus} onChange={(event) => setTyped(event.target.value)}>
        {options.map(({ value, word }) => (
          <option key={value} value={value}>
            {word}
          </option>
        ))}
      </select>
    );
  return (
    <input
      {...common}
      ref={takeFocus}
      autoComplete="off"
      inputMode={column.figures ? "decimal" : "text"}
      onChange={(event) => setTyped(event.target.value)}
    />
  );
}

const takeFocus = (field: HTMLElement | null): void => field?.focus({ preventScroll: true });

/** Of a list the option that is meant: its word, or the first that begins with the letter that was typed. */
function startOf(
  start: string,
  options: readonly { readonly value: string; readonly word: string }[] | undefined,
): string {
  if (!options) return start;
  const letter = start.toLowerCase();
  return (
    (
      options.find(({ word, value }) => word === start || value === start) ??
      options.find(({ word }) => letter !== "" && word.toLowerCase().startsWith(letter)) ??
      options[0]
    )?.value ?? ""
  );
}
