import { day, type Handover, handoverOfStorey, type Storey, say, type Words } from "#engine";
import { deviceSchedule } from "../csv/device-schedule.ts";
import type { Sheet } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import { storeyDxf } from "../dxf/storey-dxf.ts";
import { testStanding } from "../handover/test-pages.ts";
import { devicesIntoModel } from "../ifc/into-model.ts";
import { siteIfc } from "../ifc/site-ifc.ts";
import { labelSheets } from "../labels/label-sheets.ts";
import { maskTemplates } from "../mask-template/mask-templates.ts";
import { pdfOf } from "../pdf/pdf.ts";
import { offerFiles } from "../quote/offer-files.ts";
import { roomCards } from "../room-cards/room-cards.ts";
import { settingOutSheets, type UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingLines } from "../setting-sheets/setting-lines.ts";
import { settingSheets } from "../setting-sheets/setting-sheets.ts";
import { svgOf } from "../svg/svg.ts";
import type { WiringPlan } from "../wiring/plan.ts";
import { speakIn } from "../words/speak.ts";
import { type BoundDocument, type BoundSection, bookmarksOf, boundPack } from "./bound-pack.ts";
import type { PackFile, PackInput, PaperDetails } from "./pack-input.ts";
import { scheduleWorkbook } from "./schedule-workbook.ts";
import { slugsOf } from "./slugs.ts";
import { wiringPart } from "./wiring-part.ts";

/** A file that is made when it is wanted. */
interface Wanted {
  readonly name: string;
  readonly make: () => Promise<PackFile> | PackFile;
}

/**
 * The files of a pack: the whole as one bookmarked PDF; its parts by themselves as SVG and PDF; plans as DXF, the building as a model,
 * a template for each lens with masks; all schedules as one workbook and as CSV; materials and quote; labels for the devices and cards for the people in the rooms.
 */
export async function packFiles(given: PackInput): Promise<readonly PackFile[]> {
  const input = withStatus(partOf(given));
  const wanted = (await allFiles(input)).filter(({ name }) => isWanted(name, input.only));
  const files: PackFile[] = [];
  for (const [i, { name, make }] of wanted.entries()) {
    await input.progress?.(name, i / wanted.length);
    files.push(await make());
  }
  return files;
}

const isWanted = (name: string, only: readonly string[] | undefined): boolean =>
  only === undefined || only.some((beginning) => name.startsWith(beginning));

/** The pack of one storey, or of the whole job; what is drawn of a plan needs the whole in either. */
interface Parted extends PackInput {
  readonly whole: Handover;
  readonly details: PaperDetails;
}

function partOf(given: PackInput): Parted {
  const { handover: whole, storey, owed = [], language = "en" } = given;
  const details = { ...given.details, speak: speakIn(language) };
  if (storey === undefined) return { ...given, whole, details };
  const handover = handoverOfStorey(whole, storey);
  const rooms = new Set(handover.rooms.map(({ title }) => title));
  // What is owed of the job as a whole stands in every pack.
  return {
    ...given,
    whole,
    details,
    handover,
    owed: owed.filter(({ room }) => room === "" || rooms.has(room)),
  };
}

/** Title blocks say how far the tests have come. */
function withStatus(input: Parted): Parted {
  const standing = testStanding(input.handover);
  if (standing === "planned") return input;
  const status =
    standing === "tested" ? say`Tested on site, see certificate` : say`Tested in part, see certificate`;
  return { ...input, details: { ...input.details, status } };
}

/** A sheet that stands in several files, as a page of the whole, by itself and as a picture, is drawn once. */
function drawnOnce(sheet: UnnumberedSheet): UnnumberedSheet {
  let drawn: { readonly page: number; readonly of: number; readonly sheet: Sheet } | undefined;
  return (page, of) => {
    if (drawn?.page !== page || drawn.of !== of) drawn = { page, of, sheet: sheet(page, of) };
    return drawn.sheet;
  };
}
const onceEach = <Kind extends Papers>(document: Kind): Kind => ({
  ...document,
  sheets: document.sheets.map(drawnOnce),
});

/** Sheets that come as a file of their own. */
type Papers = Pick<BoundDocument, "name" | "sheets">;

async function allFiles(input: Parted): Promise<readonly Wanted[]> {
  const { handover, whole: all } = input;
  const { site } = handover;
  const storeys = site.storeys.filter((storey) => site.rooms.some((room) => room.storey === storey.id));
  const slugs = slugsOf(storeys);
  const wiring = wiringPart({ ...input, variant: input.variant ?? "colour" });
  const offer = await offerOf(input, wiring.plan);
  const plans = storeys.map((storey) =>
    onceEach({
      name: `plan-${slugs.get(storey.id)}`,
      heading: say`Plan ${storey.name}`,
      sheets: [planOf(input, storey)],
    }),
  );
  const drawnWiring = wiring.documents.map(onceEach);
  const settingOut = storeys.map((storey) =>
    onceEach({
      name: `setting-out-${slugs.get(storey.id)}`,
      heading: say`Setting out ${storey.name}`,
      sheets: settingOutSheets({
        site: all.site,
        storey: storey.id,
        title: titleOf(input, { storey, sheet: say`Setting out` }),
        asbestos: input.asbestos,
      }),
    }),
  );
  const settings = onceEach(settingsOf(input));
  const masks = onceEach(masksOf(input));
  const sections = boundPack(input, { plans, settingOut, wiring: drawnWiring, settings, masks });
  const whole = sections.reduce((sum, { sheets }) => sum + sheets.length, 0);
  const pageOf = new Map(
    sections.flatMap(({ sheets, start }) => sheets.map((sheet, i) => [sheet, start + i] as const)),
  );
  const bound = [...plans, ...settingOut, ...drawnWiring, settings, masks]
    .filter(({ sheets }) => sheets.length > 0)
    .flatMap(({ name, sheets }) =>
      filesOf(input, {
        name,
        pages: sheets.map((sheet) => ({ sheet, page: pageOf.get(sheet)!, of: whole })),
      }),
    );
  const alone = [...offer.documents, ...forPeople(input)]
    .map(onceEach)
    .filter(({ sheets }) => sheets.length > 0)
    .flatMap(({ name, sheets }) =>
      filesOf(input, { name, pages: sheets.map((sheet, i) => ({ sheet, page: i + 1, of: sheets.length })) }),
    );
  const drawings = storeys.map((storey) =>
    file(`plan-${slugs.get(storey.id)}.dxf`, () =>
      storeyDxf(all.site, storey.id, {
        zones: all.zones,
        cables: wiring.cables,
        boards: all.wiring.kind === "built" ? all.wiring.found.boards : [],
      }),
    ),
  );
  const tables = [...wiring.tables, ...offer.tables].map(({ name, content }) => file(name, () => content));
  return [
    boundFile(input, sections),
    ...bound,
    ...alone,
    ...drawings,
    file("building.ifc", () => modelOf(input)),
    file("device-schedule.csv", () => deviceSchedule(site, input.details.speak)),
    file("schedules.xlsx", () =>
      scheduleWorkbook(handover, { plan: wiring.plan, owed: input.owed ?? [], speak: input.details.speak }),
    ),
    ...tables,
  ];
}

const file = (name: string, make: () => string | Uint8Array | Promise<Uint8Array>): Wanted => ({
  name,
  make: async () => ({ name, content: await make(), sheets: [] }),
});

interface Page {
  readonly sheet: UnnumberedSheet;
  readonly page: number;
  readonly of: number;
}

/** Each sheet as SVG, and all of them as one PDF. */
function filesOf(
  input: Parted,
  { name, pages }: { readonly name: string; readonly pages: readonly Page[] },
): readonly Wanted[] {
  const drawn = ({ sheet, page, of }: Page): Numbered => ({ page, sheet: sheet(page, of) });
  return [
    ...pages.map((page, i): Wanted => {
      const own = `${pages.length === 1 ? name : `${name}-${i + 1}`}.svg`;
      return {
        name: own,
        make: () => {
          const numbered = drawn(page);
          return { name: own, content: svgOf(numbered.sheet), sheets: [sheetLine(numbered)] };
        },
      };
    }),
    {
      name: `${name}.pdf`,
      make: async () => {
        const numbered = pages.map(drawn);
        return {
          name: `${name}.pdf`,
          content: await pdfOf(
            numbered.map((one) => one.sheet),
            pdfDetails(input, numbered[0]!.sheet.title),
          ),
          sheets: numbered.map(sheetLine),
        };
      },
    },
  ];
}

/** The whole pack as one file. */
function boundFile(input: Parted, sections: readonly BoundSection[]): Wanted {
  const pages = sections.flatMap(({ sheets }) => sheets);
  return {
    name: "handover.pdf",
    make: async () => {
      const numbered = pages.map((sheet, i) => ({ page: i + 1, sheet: sheet(i + 1, pages.length) }));
      return {
        name: "handover.pdf",
        content: await pdfOf(
          numbered.map((one) => one.sheet),
          {
            ...pdfDetails(input, `${input.details.job}: ${input.details.speak(say`hand-over`)}`),
            bookmarks: bookmarksOf(sections, input.details.speak),
          },
        ),
        sheets: numbered.map(sheetLine),
      };
    },
  };
}

const pdfDetails = ({ fonts, details, created, language = "en" }: PackInput, title: string) => ({
  fonts,
  title,
  author: details.drawnBy,
  language,
  created,
});

function modelOf({ handover, details, created, model }: Parted): string | Uint8Array {
  const settings = settingLines(handover.settings.devices);
  if (model) return devicesIntoModel(handover.site, model, { settings, speak: details.speak });
  const { job, site, drawnBy, speak } = details;
  return siteIfc(handover.site, { job, site, drawnBy, created, settings, speak });
}

/** Labels to stick on and cards to hang up: no pages of the bound pack. */
function forPeople({
  handover,
  details,
  identity,
  labels,
  call = "",
  language = "en",
  cards = language,
}: Parted): readonly Papers[] {
  const { site } = handover;
  const { devices } = handover.settings;
  const { job, date, revision, speak } = details;
  return [
    {
      name: "labels",
      sheets: labelSheets({ site, devices, job, identity, speak, ...(labels ? { grid: labels } : {}) }),
    },
    {
      name: "room-cards",
      sheets: roomCards({
        site,
        devices,
        job,
        date: (cards === language ? speak : speakIn(cards))(day(date)),
        revision,
        call,
        language: cards,
      }),
    },
  ];
}

const settingsOf = ({ handover, deviceLabels, details, device }: Parted): BoundDocument => ({
  name: "setting-sheets",
  heading: say`Setting sheets`,
  sheets: settingSheets({
    site: handover.site,
    devices: handover.settings.devices.filter(
      ({ context }) => device === undefined || context.device === device,
    ),
    labels: deviceLabels,
    job: details.job,
    date: details.date,
    revision: details.revision,
    speak: details.speak,
  }),
});

const masksOf = ({ handover, details: { job, date, revision, speak } }: Parted): BoundDocument => ({
  name: "mask-templates",
  heading: say`Mask templates`,
  sheets: maskTemplates({ site: handover.site, job, date, revision, speak }),
});

/** Materials and quote. A job without detectors has nothing to offer. */
async function offerOf(
  { handover, prices, accepted, details, storey }: Parted,
  plan: WiringPlan | undefined,
): Promise<{
  readonly documents: readonly Papers[];
  readonly tables: readonly { readonly name: string; readonly content: string | Uint8Array }[];
}> {
  // What a firm offers is the job: quotes of storeys would count a group that spans two of them twice.
  if (handover.site.detectors.length === 0 || storey !== undefined) return { documents: [], tables: [] };
  return offerFiles({
    site: handover.site,
    plan,
    list: prices,
    accepted,
    title: (sheet) => ({ ...details, storey: "", sheet }),
  });
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

function planOf(input: Parted, storey: Storey): UnnumberedSheet {
  const { whole: handover, variant } = input;
  return (page, pages) =>
    planSheet({
      site: handover.site,
      storey: storey.id,
      coverage: handover.rooms.map(({ coverage }) => coverage),
      zones: handover.zones,
      title: { ...titleOf(input, { storey, sheet: say`Plan, detectors` }), page, pages },
      ...(variant ? { variant } : {}),
    });
}

const titleOf = (
  input: Parted,
  of: { readonly storey: Storey; readonly sheet: Words },
): Omit<SheetTitle, "page" | "pages"> => ({ ...input.details, storey: of.storey.name, sheet: of.sheet });
