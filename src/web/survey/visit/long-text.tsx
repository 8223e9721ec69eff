import { useState } from "react";
import { Label, TextArea, TextField } from "react-aria-components";

interface LongTextProps {
  readonly label: string;
  readonly value: string;
  readonly disabled: boolean;
  readonly onChange: (text: string) => void;
}

/** Several lines of plain text, kept when one leaves the field: one step of undo. */
export function LongText({ label, value, disabled, onChange }: LongTextProps) {
  const [draft, setDraft] = useState<string | undefined>();
  return (
    <TextField
      className="field"
      value={draft ?? value}
      onChange={setDraft}
      isDisabled={disabled}
      maxLength={20_000}
      onBlur={() => {
        if (draft !== undefined && draft.trim() !== value) onChange(draft.trim());
        setDraft(undefined);
      }}
    >
      <Label className="field-label">{label}</Label>
      <TextArea className="field-input visit-text" rows={3} />
    </TextField>
  );
}
