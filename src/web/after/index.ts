export { CallBackPanel } from "./call-back-panel.tsx";
export { SwapPanel } from "./swap-panel.tsx";
