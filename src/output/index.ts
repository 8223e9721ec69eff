export { csvOf } from "./csv/csv.ts";
export { deviceSchedule } from "./csv/device-schedule.ts";
export { detectorMark, detectorMarks, detectorRingRadius } from "./drawing/detector-mark.ts";
export { dotsInside, hatchStrokes } from "./drawing/hatching.ts";
export { type Hue, ink, type Look, lookOf, muted, paper, type Variant } from "./drawing/ink.ts";
export type { Box, Fill, Mark, Millimetres, PaperPoint, Pen, Sheet, TextMark } from "./drawing/mark.ts";
export { type PlanSheetInput, planSheet } from "./drawing/plan-sheet.ts";
export type { Projection } from "./drawing/projection.ts";
export { plannedWords, type SheetTitle } from "./drawing/title-block.ts";
export type { DeviceZone } from "./drawing/zone-marks.ts";
export { type DrawnBeside, type DrawnCable, storeyDxf } from "./dxf/storey-dxf.ts";
export type { OwedPoint } from "./handover/closing-pages.ts";
export type { SettingLine } from "./ifc/devices-ifc.ts";
export {
  devicesIntoModel,
  type ModelRefusal,
  type ModelToFill,
  modelRefusal,
  refusalCodes,
} from "./ifc/into-model.ts";
export { type SiteIfcDetails, siteIfc } from "./ifc/site-ifc.ts";
export { type LabelGridName, labelGrids } from "./labels/label-grids.ts";
export { type LabelText, labelText, readLabelText } from "./labels/label-text.ts";
export { type QrModules, qrOf } from "./labels/qr.ts";
export { type LensFlower, lensFlower } from "./mask-template/lens-flower.ts";
export { type MaskTemplatesInput, maskTemplates } from "./mask-template/mask-templates.ts";
export { packFiles } from "./pack/pack-files.ts";
export type { JobSheetDetails, PackFile, PackInput } from "./pack/pack-input.ts";
export { slugOf } from "./pack/slugs.ts";
export { type Bookmark, type PdfDetails, type PdfFonts, pdfOf } from "./pdf/pdf.ts";
export type { AsbestosKnown } from "./setting-out/asbestos-band.ts";
export { type Measure, measuresOf } from "./setting-out/measures.ts";
export {
  type SettingOutInput,
  settingOutSheets,
  type UnnumberedSheet,
} from "./setting-out/setting-out-sheets.ts";
export { svgOf } from "./svg/svg.ts";
export { german } from "./words/de.ts";
export { spanish } from "./words/es.ts";
export { french } from "./words/fr.ts";
export { type PaperLanguage, type PaperWords, paperLanguages } from "./words/paper-words.ts";
export { type Speak, speakIn } from "./words/speak.ts";
