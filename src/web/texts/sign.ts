import catalogue from "./en/sign.json" with { type: "json" };
import { type KeyOf, sentencesOf } from "./texts.ts";

/** Key of a sentence that every screen has, or of one that only this part of the screen needs. */
export type TextKey = KeyOf<typeof catalogue>;

/** The sentence with its {names} filled, from this part of the catalogue or from the common one. */
export const t = sentencesOf(catalogue);
