import type { ReactNode } from "react";
import {
  Button,
  Checkbox,
  Disclosure,
  DisclosurePanel,
  Heading,
  Label,
  Radio,
  RadioGroup,
} from "react-aria-components";
import { t } from "../texts/index.ts";
import "./fields.css";

export interface Option<T extends string> {
  readonly value: T;
  readonly word: string;
  /** A small drawing before the word. */
  readonly sign?: ReactNode;
}

interface PickProps<T extends string> extends ChoiceProps<T> {
  readonly wide?: boolean;
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly Option<T>[];
  readonly onChange: (value: T) => void;
}

/** A few words side by side, of which one holds. */
export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  return (
    <RadioGroup
      className="choice"
      value={value}
      onChange={(next) => onChange(next as T)}
      orientation="horizontal"
    >
      <Label className="field-label">{label}</Label>
      <div className="choice-row">
        {options.map((option) => (
          <Radio key={option.value} value={option.value} className="choice-word">
            {option.sign}
            {option.word}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

/** One of many: the device's own list, which every phone shows well. */
export function Pick<T extends string>({ label, value, options, onChange, wide }: PickProps<T>) {
  return (
    <label className={wide === true ? "field field-wide" : "field"}>
      <span className="field-label">{label}</span>
      <span className="field-box">
        <select className="field-input" value={value} onChange={(event) => onChange(event.target.value as T)}>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.word}
            </option>
          ))}
        </select>
      </span>
    </label>
  );
}

interface TickProps {
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
  readonly children: ReactNode;
  readonly disabled?: boolean;
}

/** Yes or no, with its sentence beside it. */
export function Tick({ on, onChange, children, disabled }: TickProps) {
  return (
    <Checkbox className="tick" isSelected={on} onChange={onChange} isDisabled={disabled === true}>
      <span className="tick-box" aria-hidden="true">
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M3 8.5 6.5 12 13 4.5" />
        </svg>
      </span>
      <span>{children}</span>
    </Checkbox>
  );
}

/** What is rarely needed, folded away behind one word. */
export function More({
  children,
  word,
  open,
}: {
  readonly children: ReactNode;
  readonly word?: string;
  readonly open?: boolean;
}) {
  return (
    <Disclosure className="more" defaultExpanded={open === true}>
      <Heading>
        <Button slot="trigger" className="more-trigger">
          <svg viewBox="0 0 12 12" aria-hidden="true" className="more-sign">
            <path d="M4 2l4 4-4 4" />
          </svg>
          {word ?? t("fields.more")}
        </Button>
      </Heading>
      <DisclosurePanel className="more-panel">{children}</DisclosurePanel>
    </Disclosure>
  );
}
