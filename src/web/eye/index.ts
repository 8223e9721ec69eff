export { EyeView } from "./eye-view.tsx";
