import type { Handover, PriceList, QuoteItem, SiteEntry } from "#engine";
import type { Variant } from "../drawing/ink.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { OwedPoint } from "../handover/closing-pages.ts";
import type { SignatureLine } from "../handover/signature-pages.ts";
import type { ModelToFill } from "../ifc/into-model.ts";
import type { LabelGridName } from "../labels/label-grids.ts";
import type { PdfFonts } from "../pdf/pdf.ts";
import type { AsbestosKnown } from "../setting-out/asbestos-band.ts";
import type { PaperLanguage } from "../words/paper-words.ts";

/** What the title blocks say of the job as a whole. */
export type JobSheetDetails = Pick<
  SheetTitle,
  "job" | "client" | "site" | "date" | "revision" | "drawnBy" | "checkedBy" | "status"
>;

/** The same with what the papers speak. */
export type PaperDetails = JobSheetDetails & Pick<SheetTitle, "speak">;

export interface PackInput {
  /** Everything that is handed over. */
  readonly handover: Handover;
  readonly details: JobSheetDetails;
  /** Whom the people in the rooms call; a line to fill in where nobody is named. */
  readonly call?: string;
  /** What the papers speak; English if absent. */
  readonly language?: PaperLanguage;
  /** What the people in the rooms read: the language of the room cards; that of the papers if absent. */
  readonly cards?: PaperLanguage;
  readonly asbestos: AsbestosKnown;
  /** What the devices at hand call their positions, by detector and setting. */
  readonly deviceLabels: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** Who made an entry on site, by its id. */
  readonly by?: ReadonlyMap<SiteEntry["id"], string>;
  /** Who has signed what. */
  readonly signatures?: readonly SignatureLine[];
  readonly owed?: readonly OwedPoint[];
  /** What the firm charges; an empty list leaves everything unpriced. */
  readonly prices?: PriceList;
  /** Lines of the quote that was accepted: the plan of now is held against them. */
  readonly accepted?: readonly QuoteItem[];
  /** Identity that every copy of the job carries, for the codes on labels; empty where the job has none. */
  readonly identity: string;
  /** Id of the storey that the pack is of; the whole job if absent. Materials and quote are of the whole job only. */
  readonly storey?: string;
  /** The building model that the job was read from: the devices are added to it. A fresh model is written if absent. */
  readonly model?: ModelToFill;
  /** How labels lie on their sheet. */
  readonly labels?: LabelGridName;
  readonly fonts: PdfFonts;
  /** Stamped into the PDFs. */
  readonly created: Date;
  readonly variant?: Variant;
  /** Which files are wanted, by the beginnings of their names; all if absent. Page numbers stay those of the whole. */
  readonly only?: readonly string[];
  /** The only detector of which a setting sheet is made; all if absent. */
  readonly device?: string;
  /** Told what is being made and how far, 0 … 1; may give others their turn. */
  readonly progress?: (name: string, share: number) => void | Promise<void>;
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
