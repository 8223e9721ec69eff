export { type ReadInWorkerOptions, readIfcInWorker } from "./ifc/in-node.ts";
export type { KillableOptions } from "./killable.ts";
export { type ReadPlanOptions, readPlanInWorker, surveyPlanInWorker } from "./linework/in-node.ts";
export { readScanInWorker, type ScanPictureResult } from "./plan/pdf/scan-in-node.ts";
