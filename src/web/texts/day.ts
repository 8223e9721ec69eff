import catalogue from "./en/day.json" with { type: "json" };
import { sentencesOf } from "./texts.ts";

/** The sentence with its {names} filled, from this part of the catalogue or from the common one. */
export const t = sentencesOf(catalogue);
