export { Caution } from "./caution.tsx";
export { WirePanel } from "./wire-panel.tsx";
export { WireSelection } from "./wire-selection.tsx";
