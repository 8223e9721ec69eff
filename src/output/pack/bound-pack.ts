import { type Handover, say, type Words } from "#engine";
import { carePages } from "../handover/care-pages.ts";
import { cautionPages, methodPages, openPages, revisionPages } from "../handover/closing-pages.ts";
import { type Section, withContents } from "../handover/contents.ts";
import { cover } from "../handover/cover.ts";
import { roomPages } from "../handover/room-pages.ts";
import { signaturePages } from "../handover/signature-pages.ts";
import { testPages } from "../handover/test-pages.ts";
import type { Bookmark } from "../pdf/pdf.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Speak } from "../words/speak.ts";
import type { PackInput, PaperDetails } from "./pack-input.ts";

/** A document that also comes as a file of its own. */
export interface BoundDocument {
  readonly name: string;
  /** As it stands in the contents. */
  readonly heading: Words;
  readonly sheets: readonly UnnumberedSheet[];
}

/** A section of the pack with the page on which it begins. */
export interface BoundSection extends Section {
  readonly start: number;
}

/**
 * The whole pack in its order: cover, contents, plans, rooms, setting-out, wiring, schedules, settings, masks, tests, open points, cautions,
 * method with sources, revisions.
 */
export function boundPack(
  input: PackInput & { readonly whole: Handover; readonly details: PaperDetails },
  documents: {
    readonly plans: readonly BoundDocument[];
    readonly settingOut: readonly BoundDocument[];
    readonly wiring: readonly BoundDocument[];
    readonly settings: BoundDocument;
    readonly masks: BoundDocument;
  },
): readonly BoundSection[] {
  const { handover, variant = "colour" } = input;
  const only = input.storey === undefined ? "" : (handover.site.storeys[0]?.name ?? "");
  const title = (sheet: Words, storey = only): SectionTitle => ({
    ...input.details,
    storey,
    sheet,
  });
  const rooms = handover.rooms.map((room) => ({
    heading: room.title,
    sheets: roomPages({ handover: input.whole, room, title: title(say`Room`, room.storey), variant }),
  }));
  const sections = withContents(
    [
      { heading: say`Cover`, sheets: [cover({ handover, title: title(say`Cover`) })] },
      named(say`Plans`, documents.plans),
      joined(say`Rooms`, rooms),
      named(say`Setting out`, documents.settingOut),
      named(say`Wiring`, documents.wiring),
      { heading: say`Setting sheets`, sheets: documents.settings.sheets },
      { heading: say`Mask templates`, sheets: documents.masks.sheets },
      {
        heading: say`Test certificate`,
        sheets: certificate(input, title(say`Test certificate`)),
      },
      {
        heading: say`Open points`,
        sheets: openPages(handover, { title: title(say`Open points`), owed: input.owed ?? [] }),
      },
      {
        heading: say`After hand-over`,
        sheets: carePages(handover, { title: title(say`After hand-over`), by: input.by ?? new Map() }),
      },
      { heading: say`Cautions`, sheets: cautionPages(handover, title(say`Cautions`)) },
      { heading: say`Method, assumptions and sources`, sheets: methodPages(handover, title(say`Method`)) },
      { heading: say`Revisions`, sheets: revisionPages(handover, title(say`Revisions`)) },
    ],
    title(say`Contents`),
  );
  let start = 1;
  return sections.map((section) => {
    const own = { ...section, start };
    start += section.sheets.length;
    return own;
  });
}

type SectionTitle = PaperDetails & { readonly storey: string; readonly sheet: Words };

/** The tests, and who has signed them. A job without detectors has neither. */
function certificate(
  { handover, by = new Map(), signatures = [] }: PackInput,
  title: SectionTitle,
): readonly UnnumberedSheet[] {
  const tests = testPages({ handover, title, by });
  if (tests.length === 0 && signatures.length === 0) return [];
  return [...tests, ...signaturePages(signatures, { title, supply: handover.order.groups[0]?.supply })];
}

function joined(
  heading: Words,
  parts: readonly { heading: Words; sheets: readonly UnnumberedSheet[] }[],
): Section {
  let from = 0;
  const within = parts
    .filter(({ sheets }) => sheets.length > 0)
    .map((part) => {
      const own = { heading: part.heading, from };
      from += part.sheets.length;
      return own;
    });
  return { heading, sheets: parts.flatMap(({ sheets }) => sheets), within };
}

/** Documents under the heading of their section. */
const named = (heading: Words, documents: readonly BoundDocument[]): Section => joined(heading, documents);

/** Marks beside the pages, for the sections and what is within them. */
export const bookmarksOf = (sections: readonly BoundSection[], speak: Speak): readonly Bookmark[] =>
  sections.map(({ heading, start, within = [] }) => ({
    heading: speak(heading),
    sheet: start - 1,
    within: within.map((part) => ({ heading: speak(part.heading), sheet: start - 1 + part.from })),
  }));
