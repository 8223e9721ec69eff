import type { BuiltWiring, FoundInstallation, PlannedDevice, RoomCoverage, Site, Storey } from "#engine";
import { deviceSchedule } from "../csv/device-schedule.ts";
import type { Variant } from "../drawing/ink.ts";
import type { Sheet } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { DeviceZone } from "../drawing/zone-marks.ts";
import { storeyDxf } from "../dxf/storey-dxf.ts";
import { type PdfFonts, pdfOf } from "../pdf/pdf.ts";
import type { AsbestosKnown } from "../setting-out/asbestos-band.ts";
import { settingOutSheets, type UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingSheets } from "../setting-sheets/setting-sheets.ts";
import { svgOf } from "../svg/svg.ts";
import { wiringDrawings, wiringSchedules, wiringTables } from "../wiring/wiring-documents.ts";
import { wiringPlan } from "../wiring/wiring-plan.ts";

/** What the title blocks say of the job as a whole. */
export type JobSheetDetails = Pick<
  SheetTitle,
  "job" | "client" | "site" | "date" | "revision" | "drawnBy" | "checkedBy"
>;

export interface PackInput {
  readonly site: Site;
  readonly coverage: readonly RoomCoverage[];
  readonly zones: readonly DeviceZone[];
  readonly details: JobSheetDetails;
  readonly asbestos: AsbestosKnown;
  /** Boards and circuits with the wiring built from them; absent where nothing of it is on record. */
  readonly wiring?: { readonly found: FoundInstallation; readonly built: BuiltWiring };
  /** What is set on each device, and what the devices at hand call their positions. */
  readonly settings?: {
    readonly devices: readonly PlannedDevice[];
    readonly labels: ReadonlyMap<string, Readonly<Record<string, string>>>;
  };
  readonly fonts: PdfFonts;
  /** Stamped into the PDFs. */
  readonly created: Date;
  readonly variant?: Variant;
}

export interface PackFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  /** The sheets in it, in order. */
  readonly sheets: readonly {
    readonly title: string;
    readonly page: number;
    readonly scale: number | undefined;
  }[];
}

/**
 * The files of a pack: plans and setting-out sheets of every storey that has rooms, as SVG and PDF, each plan as DXF, and the device schedule;
 * with the wiring a drawing for each switched group, and schedules of terminals, cables and boxes; with the settings a card for each device.
 */
export async function packFiles(input: PackInput): Promise<readonly PackFile[]> {
  const { site } = input;
  const storeys = site.storeys.filter((storey) => site.rooms.some((room) => room.storey === storey.id));
  const slugs = slugsOf(storeys);
  const wiring = wiringOf(input);
  const documents = [
    ...storeys.map(
      (storey): Document => ({ name: `plan-${slugs.get(storey.id)}`, sheets: [planOf(input, storey)] }),
    ),
    ...storeys.map(
      (storey): Document => ({
        name: `setting-out-${slugs.get(storey.id)}`,
        sheets: settingOutSheets({
          site,
          storey: storey.id,
          title: titleOf(input, { storey, sheet: "Setting out" }),
          asbestos: input.asbestos,
        }),
      }),
    ),
    ...wiring.documents,
    {
      name: "setting-sheets",
      sheets: settingSheets({
        site,
        devices: input.settings?.devices ?? [],
        labels: input.settings?.labels ?? new Map(),
        job: input.details.job,
        date: input.details.date,
        revision: input.details.revision,
      }),
    },
  ].filter((document) => document.sheets.length > 0);
  const pages = documents.reduce((sum, document) => sum + document.sheets.length, 0);
  let page = 0;
  const files: PackFile[] = [];
  for (const { name, sheets } of documents) {
    const numbered = sheets.map((sheet) => {
      page += 1;
      return { page, sheet: sheet(page, pages) };
    });
    files.push(...numbered.map((one, i) => svgFile(sheets.length === 1 ? name : `${name}-${i + 1}`, one)));
    files.push({
      name: `${name}.pdf`,
      content: await pdfOf(
        numbered.map((one) => one.sheet),
        {
          fonts: input.fonts,
          title: numbered[0]!.sheet.title,
          author: input.details.drawnBy,
          created: input.created,
        },
      ),
      sheets: numbered.map(sheetLine),
    });
  }
  const drawings = storeys.map(
    (storey): PackFile => ({
      name: `plan-${slugs.get(storey.id)}.dxf`,
      content: storeyDxf(site, storey.id),
      sheets: [],
    }),
  );
  const tables = [{ name: "device-schedule.csv", content: deviceSchedule(site) }, ...wiring.tables];
  return [...files, ...drawings, ...tables.map((table) => ({ ...table, sheets: [] }))];
}

/** Drawings and schedules of the wiring. */
function wiringOf(input: PackInput): {
  readonly documents: readonly Document[];
  readonly tables: readonly { readonly name: string; readonly content: string }[];
} {
  const { site, wiring, variant = "colour" } = input;
  if (wiring === undefined) return { documents: [], tables: [] };
  const plan = wiringPlan(site, wiring.found, wiring.built);
  const papers = {
    site,
    plan,
    variant,
    title: (sheet: string, storey: string | undefined) => ({
      ...input.details,
      storey: site.storeys.find(({ id }) => id === storey)?.name ?? "",
      sheet,
    }),
  };
  return {
    documents: [
      { name: "wiring", sheets: wiringDrawings(papers) },
      { name: "wiring-schedules", sheets: wiringSchedules(papers) },
    ],
    tables: plan.groups.length === 0 ? [] : wiringTables(papers),
  };
}

interface Document {
  readonly name: string;
  readonly sheets: readonly UnnumberedSheet[];
}

interface Numbered {
  readonly page: number;
  readonly sheet: Sheet;
}

const sheetLine = ({ page, sheet }: Numbered): PackFile["sheets"][number] => ({
  title: sheet.title,
  page,
  scale: sheet.scale,
});

const svgFile = (name: string, numbered: Numbered): PackFile => ({
  name: `${name}.svg`,
  content: svgOf(numbered.sheet),
  sheets: [sheetLine(numbered)],
});

function planOf(input: PackInput, storey: Storey): UnnumberedSheet {
  const { site, coverage, zones, variant } = input;
  return (page, pages) =>
    planSheet({
      site,
      storey: storey.id,
      coverage,
      zones,
      title: { ...titleOf(input, { storey, sheet: "Plan, detectors" }), page, pages },
      ...(variant ? { variant } : {}),
    });
}

const titleOf = (
  input: PackInput,
  of: { readonly storey: Storey; readonly sheet: string },
): Omit<SheetTitle, "page" | "pages"> => ({ ...input.details, storey: of.storey.name, sheet: of.sheet });

/** Names of storeys as parts of file names, all different. */
function slugsOf(storeys: readonly Storey[]): ReadonlyMap<string, string> {
  const used = new Set<string>();
  return new Map(
    storeys.map((storey, i) => {
      const plain = storey.name
        .normalize("NFD")
        .replace(/\p{Mark}/gu, "")
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, "-")
        .replace(/^-+|-+$/g, "")
        .slice(0, 40);
      const name = plain === "" || used.has(plain) ? [plain, String(i + 1)].filter(Boolean).join("-") : plain;
      used.add(name);
      return [storey.id, name];
    }),
  );
}
