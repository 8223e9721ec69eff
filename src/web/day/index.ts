export { DayPanel } from "./day-panel.tsx";
