export { SetPanel } from "./set-panel.tsx";
export { SettingCard } from "./setting-card.tsx";
