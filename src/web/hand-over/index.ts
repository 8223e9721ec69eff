export { HandOverPanel } from "./hand-over-panel.tsx";
