import {
  type BuiltWiring,
  deriveWiring,
  type FoundInstallation,
  type PlannedDevice,
  type PriceList,
  type QuoteItem,
  type RoomCoverage,
  type Site,
  type Storey,
} from "#engine";
import { deviceSchedule } from "../csv/device-schedule.ts";
import type { Variant } from "../drawing/ink.ts";
import type { Sheet } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { DeviceZone } from "../drawing/zone-marks.ts";
import { type DrawnCable, storeyDxf } from "../dxf/storey-dxf.ts";
import { siteIfc } from "../ifc/site-ifc.ts";
import { maskTemplates } from "../mask-template/mask-templates.ts";
import type { LabelGridName } from "../labels/label-grids.ts";
import { labelSheets } from "../labels/label-sheets.ts";
import { type PdfFonts, pdfOf } from "../pdf/pdf.ts";
import { offerFiles } from "../quote/offer-files.ts";
import { roomCards } from "../room-cards/room-cards.ts";
import type { AsbestosKnown } from "../setting-out/asbestos-band.ts";
import { settingOutSheets, type UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingLines } from "../setting-sheets/setting-lines.ts";
import { settingSheets } from "../setting-sheets/setting-sheets.ts";
import { svgOf } from "../svg/svg.ts";
import type { WiringPlan } from "../wiring/plan.ts";
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
  /** What the firm charges; an empty list leaves everything unpriced. */
  readonly prices?: PriceList;
  /** Lines of the quote that was accepted: the plan of now is held against them. */
  readonly accepted?: readonly QuoteItem[];
  /** Identity that every copy of the job carries, for the codes on labels; empty where the job has none. */
  readonly identity: string;
  /** How labels lie on their sheet. */
  readonly labels?: LabelGridName;
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
 * The files of a pack: plans and setting-out sheets of every storey that has rooms, as SVG and PDF, each plan as DXF, the whole as a building model, and the device schedule;
 * with the wiring a drawing for each switched group, and schedules of terminals, cables and boxes; with the settings a card for each device; labels for the devices and cards for the people in the rooms.
 */
export async function packFiles(input: PackInput): Promise<readonly PackFile[]> {
  const { site } = input;
  const storeys = site.storeys.filter((storey) => site.rooms.some((room) => room.storey === storey.id));
  const slugs = slugsOf(storeys);
  const wiring = wiringOf(input);
  const offer = await offerOf(input, wiring.plan);
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
    {
      name: "mask-templates",
      sheets: maskTemplates({
        site,
        job: input.details.job,
        date: input.details.date,
        revision: input.details.revision,
      }),
    },
    ...offer.documents,
    ...forPeople(input),
  ].filter((document) => document.sheets.length > 0);
  const bound = documents.filter(({ alone }) => !alone);
  const pages = bound.reduce((sum, document) => sum + document.sheets.length, 0);
  let page = 0;
  const files: PackFile[] = [];
  for (const { name, sheets, alone } of documents) {
    const numbered = sheets.map((sheet, i) => {
      if (alone) return { page: i + 1, sheet: sheet(i + 1, sheets.length) };
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
      content: storeyDxf(site, storey.id, {
        zones: input.zones,
        cables: wiring.cables,
        boards: input.wiring?.found.boards ?? [],
      }),
      sheets: [],
    }),
  );
  const model: PackFile = {
    name: "building.ifc",
    content: siteIfc(site, {
      job: input.details.job,
      site: input.details.site,
      drawnBy: input.details.drawnBy,
      created: input.created,
      settings: settingLines(input.settings?.devices ?? []),
    }),
    sheets: [],
  };
  const tables = [
    { name: "device-schedule.csv", content: deviceSchedule(site) },
    ...wiring.tables,
    ...offer.tables,
  ];
  return [...files, ...drawings, model, ...tables.map((table) => ({ ...table, sheets: [] }))];
}

/** Labels to stick on and cards to hang up: no pages of the bound pack. */
function forPeople(input: PackInput): readonly Document[] {
  const { site, details, identity, labels } = input;
  const devices = input.settings?.devices ?? [];
  const { job, date, revision } = details;
  return [
    {
      name: "labels",
      alone: true,
      sheets: labelSheets({ site, devices, job, identity, ...(labels ? { grid: labels } : {}) }),
    },
    { name: "room-cards", alone: true, sheets: roomCards({ site, devices, job, date, revision }) },
  ];
}

/** Materials and quote. A job without detectors has nothing to offer. */
async function offerOf(
  input: PackInput,
  plan: WiringPlan | undefined,
): Promise<{
  readonly documents: readonly Document[];
  readonly tables: readonly { readonly name: string; readonly content: string | Uint8Array }[];
}> {
  if (input.site.detectors.length === 0) return { documents: [], tables: [] };
  const offer = await offerFiles({
    site: input.site,
    plan,
    list: input.prices,
    accepted: input.accepted,
    title: (sheet) => ({ ...input.details, storey: "", sheet }),
  });
  return { ...offer, documents: offer.documents.map((document) => ({ ...document, alone: true })) };
}

/** Drawings and schedules of the wiring. */
function wiringOf(input: PackInput): {
  readonly documents: readonly Document[];
  readonly tables: readonly { readonly name: string; readonly content: string }[];
  readonly plan: WiringPlan | undefined;
  readonly cables: readonly DrawnCable[];
} {
  const { site, wiring, variant = "colour" } = input;
  if (wiring === undefined) return { documents: [], tables: [], plan: undefined, cables: [] };
  const derived = deriveWiring(site, wiring.found);
  const plan = wiringPlan(site, wiring.found, wiring.built, derived);
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
    plan,
    cables: derived.circuits.flatMap(({ route }) => route?.cables ?? []),
  };
}

interface Document {
  readonly name: string;
  readonly sheets: readonly UnnumberedSheet[];
  /** Goes to the client by itself, so its pages are counted by themselves. */
  readonly alone?: boolean;
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
