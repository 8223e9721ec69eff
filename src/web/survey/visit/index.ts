export { VisitPanel } from "./visit-panel.tsx";
