import { t } from "../texts/models.ts";
import { sentenceOf } from "../texts/problems.ts";
import type { ReadList } from "./firm-list.ts";

/** A sentence for the whole list, or for each model in it that could not be used. */
export const troublesOf = ({ problems, wrong }: ReadList): readonly string[] =>
  wrong === undefined ? problems.map((problem) => sentenceOf(problem)) : [t(`models.list.${wrong}`)];
