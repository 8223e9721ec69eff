import { Button, ToggleButton } from "react-aria-components";
import type { LensMask } from "#engine";
import { radiansOf } from "#engine";
import { AngleField } from "../fields/index.ts";
import { t } from "../texts/eye.ts";
import { degreesText } from "../texts/index.ts";

interface MaskFieldsProps {
  readonly masks: readonly LensMask[];
  readonly selected: number | undefined;
  readonly readOnly: boolean;
  readonly onSelect: (mask: number | undefined) => void;
  readonly onAdd: () => void;
  readonly onChange: (index: number, mask: LensMask) => void;
  readonly onRemove: (index: number) => void;
}

/** The masks as figures: for the keyboard, and for one who cuts them to a drawing. */
export function MaskFields({
  masks,
  selected,
  readOnly,
  onSelect,
  onAdd,
  onChange,
  onRemove,
}: MaskFieldsProps) {
  const mask = selected === undefined ? undefined : masks[selected];
  return (
    <div className="stack">
      <ul className="eye-masks">
        {masks.map((one, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a mask has no identity but its place in the list
          <li key={index}>
            <ToggleButton
              className="button eye-mask-word"
              isSelected={index === selected}
              onChange={(on) => onSelect(on ? index : undefined)}
            >
              {t("eye.mask", {
                number: index + 1,
                from: degreesText(one.from),
                to: degreesText(one.to),
                inner: degreesText(one.inner),
                outer: degreesText(one.outer),
              })}
            </ToggleButton>
          </li>
        ))}
      </ul>
      {mask === undefined || selected === undefined || readOnly ? null : (
        <>
          <div className="fields">
            <AngleField
              label={t("eye.from")}
              value={mask.from}
              least={0}
              most={2 * Math.PI}
              onChange={(from) => onChange(selected, { ...mask, from })}
            />
            <AngleField
              label={t("eye.to")}
              value={mask.to}
              least={0}
              most={2 * Math.PI}
              onChange={(to) => onChange(selected, { ...mask, to })}
            />
            <AngleField
              label={t("eye.inner")}
              value={mask.inner}
              least={0}
              most={mask.outer - radiansOf(1)}
              onChange={(inner) => onChange(selected, { ...mask, inner })}
            />
            <AngleField
              label={t("eye.outer")}
              value={mask.outer}
              least={mask.inner + radiansOf(1)}
              most={radiansOf(90)}
              onChange={(outer) => onChange(selected, { ...mask, outer })}
            />
          </div>
          <div className="row">
            <Button className="button" onPress={() => onRemove(selected)}>
              {t("eye.remove")}
            </Button>
            <Button
              className="button button-quiet"
              onPress={() => onChange(selected, { ...mask, from: 0, to: 2 * Math.PI })}
            >
              {t("eye.all-round")}
            </Button>
          </div>
        </>
      )}
      {readOnly ? null : (
        <div>
          <Button className="button" onPress={onAdd}>
            {t("eye.add")}
          </Button>
        </div>
      )}
    </div>
  );
}
