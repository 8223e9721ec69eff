import { type PointerEvent, useState } from "react";
import { Button } from "react-aria-components";
import { t } from "../texts/sign.ts";
import { begun, drawnOn, fieldShape, onField, pathOf, type StrokePoint, type Strokes } from "./strokes.ts";

interface SignatureFieldProps {
  readonly strokes: Strokes;
  readonly onChange: (change: (before: Strokes) => Strokes) => void;
}

/** A field to sign in with a finger, a pen or the mouse. */
export function SignatureField({ strokes, onChange }: SignatureFieldProps) {
  const [pen, setPen] = useState<number | undefined>();
  const placeOf = (event: PointerEvent<SVGSVGElement>): StrokePoint => {
    const { left, top, width } = event.currentTarget.getBoundingClientRect();
    return onField({ x: event.clientX, y: event.clientY }, { left, top, width });
  };
  const down = (event: PointerEvent<SVGSVGElement>): void => {
    // A second finger, or the ball of the hand, draws nothing.
    if (pen !== undefined) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setPen(event.pointerId);
    const at = placeOf(event);
    onChange((before) => begun(before, at));
  };
  const move = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.pointerId !== pen) return;
    const at = placeOf(event);
    onChange((before) => drawnOn(before, at));
  };
  const up = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.pointerId === pen) setPen(undefined);
  };
  return (
    <div className="sign-field">
      <svg
        className="sign-paper"
        viewBox={`0 0 1000 ${1000 * fieldShape}`}
        role="img"
        aria-label={t(strokes.length === 0 ? "sign.field.empty" : "sign.field.drawn")}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
      >
        <path className="sign-line" d={`M40 ${800 * fieldShape}H960`} />
        <path className="sign-ink" d={pathOf(strokes)} />
      </svg>
      <Button className="button" isDisabled={strokes.length === 0} onPress={() => onChange(() => [])}>
        {t("sign.clear")}
      </Button>
    </div>
  );
}

/** A signature as it was drawn. */
export const SignaturePicture = ({ strokes, name }: { readonly strokes: Strokes; readonly name: string }) => (
  <svg
    className="sign-picture"
    viewBox={`0 0 1000 ${1000 * fieldShape}`}
    role="img"
    aria-label={t("sign.picture", { name })}
  >
    <path className="sign-ink" d={pathOf(strokes)} />
  </svg>
);
