import regular from "@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url";
import semibold from "@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url";
import { maskTemplates, planSheet, type Sheet, type SheetTitle, settingOutSheets, svgOf } from "#output";
import type { Calculated, OpenJob } from "../contract.ts";
import { spoken } from "../texts/index.ts";

/** Prints the sheets of a storey to scale: the plan, and where the holes are drilled. The printer's own window also saves them as PDF. */
export async function printStorey(of: {
  readonly job: OpenJob;
  readonly storey: string;
  readonly calculated: Calculated;
}): Promise<void> {
  await printSheets(sheetsOf(of), of.job.site.name);
}

/** Prints the lens of a detector with its masks, at its true size. */
export async function printTemplate(job: OpenJob, device: string): Promise<void> {
  const sheets = maskTemplates({
    site: job.site,
    detectors: [device],
    job: job.site.name,
    date: job.details.date,
    revision: job.details.revision,
    speak: spoken,
  });
  await printSheets(
    sheets.map((sheet, i) => sheet(i + 1, sheets.length)),
    job.site.name,
  );
}

/** Prints sheets at their true size. @param title - Of the print job. */
async function printSheets(sheets: readonly Sheet[], title: string): Promise<void> {
  const frame = document.createElement("iframe");
  frame.className = "print-frame";
  frame.setAttribute("aria-hidden", "true");
  document.body.append(frame);
  try {
    const paper = frame.contentDocument;
    const window = frame.contentWindow;
    if (!paper || !window) throw new Error("This browser gives no frame to print from.");
    paper.title = title;
    paper.body.innerHTML = sheets
      .map((sheet) => `<div class="sheet ${paperOf(sheet)}">${svgOf(sheet)}</div>`)
      .join("");
    const style = paper.createElement("style");
    style.textContent = pageStyle;
    paper.head.append(style);
    await paper.fonts.ready;
    window.print();
  } finally {
    // Some browsers return from print() while their window is still open and reads the frame.
    setTimeout(() => frame.remove(), 60_000);
  }
}

const paperOf = ({ width, height }: Sheet): "wide" | "tall" | "upright" =>
  height > width ? "upright" : width > 300 ? "wide" : "tall";

const pageStyle = `
@font-face { font-family: "Inter"; font-weight: 400; src: url("${new URL(regular, document.baseURI).href}"); }
@font-face { font-family: "Inter"; font-weight: 600; src: url("${new URL(semibold, document.baseURI).href}"); }
@page wide { size: 420mm 297mm; margin: 0; }
@page tall { size: 297mm 210mm; margin: 0; }
@page upright { size: 210mm 297mm; margin: 0; }
@page { margin: 0; }
body { margin: 0; }
.wide { page: wide; }
.tall { page: tall; }
.upright { page: upright; }
.sheet { break-after: page; }
.sheet:last-child { break-after: auto; }
svg { display: block; }
`;

export function sheetsOf({
  job,
  storey,
  calculated,
}: {
  readonly job: OpenJob;
  readonly storey: string;
  readonly calculated: Calculated;
}): readonly Sheet[] {
  const { site, details } = job;
  const title = (sheet: string): SheetTitle => ({
    job: site.name,
    client: details.client,
    site: details.site,
    storey: site.storeys.find(({ id }) => id === storey)?.name ?? "",
    sheet,
    date: details.date,
    revision: details.revision,
    drawnBy: details.drawnBy,
    checkedBy: details.checkedBy,
    speak: spoken,
    page: 1,
    pages: 1,
  });
  const zones = [...calculated.zones].flatMap(([device, kinds]) =>
    (["seated", "towards", "across", "sound"] as const).flatMap((kind) => {
      const region = kinds[kind];
      return region ? [{ device, kind, region }] : [];
    }),
  );
  const drilled = settingOutSheets({
    site,
    storey,
    title: title("Setting out"),
    asbestos: job.kept.visit,
  });
  const pages = 1 + drilled.length;
  const plan = planSheet({
    site,
    storey,
    coverage: [...calculated.rooms.values()],
    zones,
    title: { ...title("Plan"), page: 1, pages },
  });
  return [plan, ...drilled.map((sheet, i) => sheet(i + 2, pages))];
}
