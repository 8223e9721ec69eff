export { figureIn } from "./figures-in.ts";
export { lengthIn } from "./lengths-in.ts";
export {
  areaText,
  degreesText,
  delayText,
  durationText,
  lengthFigure,
  lengthText,
  moneyText,
  numberText,
  percentText,
  type Units,
} from "./measures.ts";
export { type TextKey, type TextValues, t } from "./texts.ts";
