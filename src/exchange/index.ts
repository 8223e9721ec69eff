export { type DxfLimits, usualDxfLimits } from "./dxf/limits.ts";
export { type ReadDxfOptions, readDxf } from "./dxf/read-dxf.ts";
export type { DxfReport, DxfResult } from "./dxf/report.ts";
export { type GivenModel, type GivenPlace, givenModel } from "./ifc/given-model.ts";
export { type GeometryKernel, type KernelLocation, loadKernel } from "./ifc/kernel.ts";
export { type ReadLimits, usualLimits } from "./ifc/limits.ts";
export { type ReadIfcOptions, readIfc } from "./ifc/read-ifc.ts";
export {
  type BlockKind,
  type BlockLuminaire,
  blockKinds,
  type DrawingPlace,
  luminairesOfBlock,
} from "./linework/block-luminaires.ts";
export type {
  LineArc,
  LineBlock,
  LineBox,
  LineLayer,
  LineText,
  Linework,
  UnitProposal,
} from "./linework/linework.ts";
export {
  type DrawingWithBlocks,
  type LuminaireBlock,
  luminairesInRooms,
} from "./linework/luminaires-in-rooms.ts";
export { type PlanKind, planKind } from "./linework/plan-kind.ts";
export { type AnyPlanResult, type PlanTask, readPlan } from "./linework/read-plan.ts";
export {
  type PlanChoice,
  type PlanSurvey,
  type PlanSurveyResult,
  surveyPlan,
} from "./linework/survey-plan.ts";
export { type ModelDrawing, proposeDrawingUnit } from "./linework/unit-proposal.ts";
export type { DayOrder } from "./logs/moment.ts";
export { type LogResult, type PresenceLog, type ReadLogOptions, readLog } from "./logs/read-log.ts";
export { fourPointMap, onPlan, type PictureMap, twoPointMap } from "./plan/calibration.ts";
export { type PlanLimits, usualPlanLimits } from "./plan/limits.ts";
export { type ReadPdfOptions, readPdf } from "./plan/pdf/read-pdf.ts";
export { type ReadScanOptions, readScan, type ScannedPage } from "./plan/pdf/read-scan.ts";
export { type PlanPicture, readPicture } from "./plan/picture/read-picture.ts";
export { type StraightPicture, straightPicture } from "./plan/picture/straight-picture.ts";
export type { PlanReport, PlanResult } from "./plan/report.ts";
export { type ReadSvgOptions, readSvg } from "./plan/svg/read-svg.ts";
export { readAcceptedQuote } from "./prices/read-accepted-quote.ts";
export { type Offer, type OfferFile, readOffer } from "./prices/read-offer.ts";
export { type PriceListResult, readPriceList } from "./prices/read-price-list.ts";
export { roomUse } from "./room-use.ts";
export {
  type FindRoomAtOptions,
  findRoomAt,
  type LineIndex,
  lineIndex,
  type RoomAt,
} from "./rooms-from-lines/find-room-at.ts";
export type { FoundOpening, FoundPlan, FoundRoom } from "./rooms-from-lines/found.ts";
export {
  type AskedDrawing,
  askedDrawing,
  type LaidLines,
  surveyRoomAt,
} from "./rooms-from-lines/survey-room-at.ts";
export { type RulePackResult, readRulePack } from "./rule-packs/read-rule-pack.ts";
export { readRulePacks } from "./rule-packs/read-rule-packs.ts";
export type {
  BlockPlace,
  DrawingBlock,
  FoundDetector,
  ImportReport,
  ImportResult,
  LeftOut,
  ReportedRoom,
  SurveyDrawing,
  SurveyRecords,
} from "./survey.ts";
