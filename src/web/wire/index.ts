export { WirePanel } from "./wire-panel.tsx";
