export { DeviceAtTest } from "./device-at-test.tsx";
export { FaultPanel } from "./fault-panel.tsx";
export { TestPanel } from "./test-panel.tsx";
export { WalkPanel } from "./walk-panel.tsx";
export { WorkPanel } from "./work-panel.tsx";
