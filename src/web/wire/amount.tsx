import { Maybe } from "../fields/index.ts";
import { t } from "../texts/wire.ts";

export { Amount, Maybe, without } from "../fields/index.ts";

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
