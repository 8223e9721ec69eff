import sentences from "./en/drawn.json" with { type: "json" };
import type { Message } from "./plain.ts";

/** Key of a sentence that is written into the plan. */
type DrawnKey = keyof typeof sentences;

/** Of what a sentence is made once a built page has read it: letters, or a {name}. */
interface Piece {
  readonly type: number;
  readonly value: string;
}

const letters = 0;

/**
 * The sentence of a key with its {names} filled. What is written into the plan is short and has nothing but names to fill:
 * the formatter of whole messages, some 12 kB, stays out of the worker that paints.
 */
export function t(key: DrawnKey, values: Readonly<Record<string, string>> = {}): string {
  const written = sentences[key] as Message;
  if (typeof written === "string")
    return written.replace(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
  return (written as readonly Piece[])
    .map(({ type, value }) => (type === letters ? value : (values[value] ?? `{${value}}`)))
    .join("");
}
