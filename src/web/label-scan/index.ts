export { ScanPanel } from "./scan-panel.tsx";
