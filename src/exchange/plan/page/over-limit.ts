import type { Problem } from "#engine";
import type { OverLimit } from "./collect.ts";

/** The problem that stands for a limit that was reached. */
export const overLimit = ({ what, limit }: OverLimit): Problem => ({
  code: "plan-too-much",
  values: { what, limit: limit.toLocaleString("en-GB").replaceAll(",", " ") },
});
