import type { PlanChoice, PlanSurvey } from "#exchange";
import { textValue, type Values } from "./command.ts";

/** Metres in one unit of the words that `--unit` takes. */
const units: Readonly<Record<string, number>> = {
  mm: 0.001,
  cm: 0.01,
  dm: 0.1,
  m: 1,
  in: 0.0254,
  ft: 0.3048,
};

/** What the command line settles of a plan; a sentence where it cannot be meant. */
export function planWish(values: Values): { readonly choice: PlanChoice; readonly page?: number } | string {
  const unit = textValue(values, "unit");
  const metres = unit === undefined ? undefined : (units[unit.toLowerCase()] ?? Number(unit));
  if (metres !== undefined && !(metres > 0 && metres <= 10_000))
    return `--unit takes mm, cm, dm, m, in, ft or metres in one drawing unit, not “${unit}”`;
  const scale = positive(values, "scale", (text) => text.replace(/^1\s*[:/]\s*/, ""));
  if (typeof scale === "string") return scale;
  const page = whole(values, "page");
  if (typeof page === "string") return page;
  const floor = whole(values, "floor");
  if (typeof floor === "string") return floor;
  const ceiling = positive(values, "ceiling");
  if (typeof ceiling === "string") return ceiling;
  const [layers, luminaires] = [names(values, "layers"), names(values, "luminaires")];
  return {
    choice: {
      ...(metres === undefined ? {} : { metres }),
      ...(scale === undefined ? {} : { scale }),
      ...(floor === undefined ? {} : { part: floor - 1 }),
      ...(ceiling === undefined ? {} : { ceiling }),
      ...(layers === undefined ? {} : { layers }),
      ...(luminaires === undefined ? {} : { luminaires }),
    },
    ...(page === undefined ? {} : { page }),
  };
}

/** Names with commas between them. */
const names = (values: Values, name: string): readonly string[] | undefined =>
  textValue(values, name)
    ?.split(",")
    .map((one) => one.trim())
    .filter((one) => one !== "");

function positive(
  values: Values,
  name: string,
  plain: (text: string) => string = (text) => text,
): number | string | undefined {
  const text = textValue(values, name);
  if (text === undefined) return undefined;
  const number = Number(plain(text));
  return number > 0 && Number.isFinite(number) ? number : `--${name} takes a number above 0, not “${text}”`;
}

function whole(values: Values, name: string): number | string | undefined {
  const number = positive(values, name);
  return typeof number !== "number" || Number.isInteger(number)
    ? number
    : `--${name} takes a whole number from 1, not “${textValue(values, name)}”`;
}

/** What was assumed of a plan, and what else could be chosen. */
export const planJson = ({ unit, ...plan }: PlanSurvey["plan"]): unknown => ({
  unit: unit.name,
  reason: unit.reason,
  ...plan,
});
