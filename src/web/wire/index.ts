export { WirePanel } from "./wire-panel.tsx";
export { WireSelection } from "./wire-selection.tsx";
