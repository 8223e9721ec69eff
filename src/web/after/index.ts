export { SwapPanel } from "./swap-panel.tsx";
