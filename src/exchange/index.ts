export { type GeometryKernel, type KernelLocation, loadKernel } from "./ifc/kernel.ts";
export { type ReadLimits, usualLimits } from "./ifc/limits.ts";
export { type ReadIfcOptions, readIfc } from "./ifc/read-ifc.ts";
export type { ImportReport, ImportResult, LeftOut, ReportedRoom, SurveyRecords } from "./survey.ts";
