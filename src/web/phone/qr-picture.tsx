import { useMemo } from "react";
import { qrOf } from "#output";

/** Light modules that a reader needs about the code. */
const quiet = 4;

/** A code on the screen: dark on light in every theme, as readers ask. */
export function QrPicture({ text, label }: { readonly text: string; readonly label: string }) {
  const code = useMemo(() => qrOf(text), [text]);
  if (!code) return null;
  const side = code.length + 2 * quiet;
  const path = code
    .flatMap((row, r) => [...row].flatMap((dark, c) => (dark ? `M${c + quiet} ${r + quiet}h1v1h-1z` : [])))
    .join("");
  return (
    <svg
      className="phone-code"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={side} height={side} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
