export { figureIn } from "./figures-in.ts";
export { lengthIn, smallLengthIn } from "./lengths-in.ts";
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
  sizeText,
  smallLengthFigure,
  smallLengthText,
  type Units,
} from "./measures.ts";
export { type TextKey, type TextValues, t } from "./texts.ts";
export { dayText, spoken } from "./told.ts";
