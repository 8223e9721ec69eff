import type { ReactNode } from "react";
import "./cards.css";

/** A small table of what was calculated: words left, figures right. */
export function Figures({ rows }: { readonly rows: readonly (readonly [string, ReactNode])[] }) {
  return (
    <dl className="figures">
      {rows.map(([word, figure]) => (
        <div key={word} className="figures-row">
          <dt>{word}</dt>
          <dd>{figure}</dd>
        </div>
      ))}
    </dl>
  );
}
