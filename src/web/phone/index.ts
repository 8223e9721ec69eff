export { PhonePanel } from "./phone-panel.tsx";
