import type { Point } from "#engine";
import { LengthField } from "../fields/index.ts";
import { t } from "../texts/index.ts";

/** Where a thing is, as two figures: the keyboard's way of dragging. */
export function PlaceFields({
  at,
  onChange,
}: {
  readonly at: Point;
  readonly onChange: (at: Point) => void;
}) {
  return (
    <div className="fields">
      <LengthField label={t("card.x")} value={at[0]} onChange={(x) => onChange([x, at[1]])} />
      <LengthField label={t("card.y")} value={at[1]} onChange={(y) => onChange([at[0], y])} />
    </div>
  );
}
