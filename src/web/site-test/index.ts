export { TestPanel } from "./test-panel.tsx";
export { WalkPanel } from "./walk-panel.tsx";
