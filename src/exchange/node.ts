export { type ReadInWorkerOptions, readIfcInWorker } from "./ifc/in-node.ts";
