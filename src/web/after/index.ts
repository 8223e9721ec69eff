export { CallBackPanel } from "./call-back-panel.tsx";
export { CarePanel } from "./care-panel.tsx";
export { DueList } from "./due-list.tsx";
export { SwapPanel } from "./swap-panel.tsx";
