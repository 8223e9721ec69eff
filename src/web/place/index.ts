export { measuredAgainst } from "./measured-against.ts";
export { PlacePanel } from "./place-panel.tsx";
