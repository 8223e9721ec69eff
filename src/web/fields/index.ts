export { Choice, More, type Option, Pick, Tick } from "./choice.tsx";
export { DraftField, type DraftFieldProps, type Reading } from "./draft-field.tsx";
export { intoView } from "./into-view.ts";
export { AngleField, FigureField, LengthField, TextBox } from "./measure-fields.tsx";
export { Problems } from "./problems.tsx";
export { Running, Say, SeverityMark, SeverityShape } from "./say.tsx";
export { Amount, Maybe, without } from "./unknown-fields.tsx";
