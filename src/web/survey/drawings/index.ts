export { DrawingsPanel } from "./drawings-panel.tsx";
