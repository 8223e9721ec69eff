import type { RecordInputs, RecordKind } from "../schema/job-file.ts";
import type { Drawn } from "./drawing.ts";

/** A mistake of the site with the way out of it. Records are found by their id; fields that are absent here stay. */
export interface SiteFault {
  /** What somebody did, in one sentence. */
  readonly mistake: string;
  readonly found: Changes;
  readonly mended: Changes;
}

type Changes = {
  readonly [Kind in RecordKind]?: Readonly<Record<string, Changed<RecordInputs[Kind]>>>;
};
/** Undefined takes a field away: nobody looked. */
type Changed<Fields> = { readonly [Name in keyof Fields]?: Fields[Name] | undefined };

const corridorPanels = (from: number, to: number): readonly string[] =>
  Array.from({ length: to - from + 1 }, (_, index) => `corridor-panel-${from + index}`);

/** What is wrong with the wiring and the settings of the demo, as it happens on sites. */
export const siteFaults: readonly SiteFault[] = [
  {
    mistake: "Both detectors of the corridor switch all of its eight panels on one small contact each.",
    found: {},
    mended: {
      detectors: {
        "corridor-west": { luminaires: corridorPanels(1, 4) },
        "corridor-east": { luminaires: corridorPanels(5, 8) },
      },
    },
  },
  {
    mistake:
      "The two detectors of the corridor were set on two days, one to five minutes and one to fifteen.",
    found: {
      detectors: {
        "corridor-west": { settings: { offDelay: 300 } },
        "corridor-east": { settings: { offDelay: 900 } },
      },
    },
    mended: {
      detectors: {
        "corridor-west": { settings: { offDelay: 300 } },
        "corridor-east": { settings: { offDelay: 300 } },
      },
    },
  },
  {
    mistake: "The stair's two-way switching takes its line upstairs and its neutral from Lighting 1 below.",
    found: { circuits: { "lighting-5": { sharedNeutral: "yes" } } },
    mended: {},
  },
  {
    mistake: "The button of the meeting room was looped in from the corridor's circuit outside its door.",
    found: { switches: { "meeting-button": { circuit: "Lighting 1" } } },
    mended: {},
  },
  {
    mistake: "Two circuits were put behind one RCD, and their panels leak more than it should bear.",
    found: {
      circuits: { "lighting-2": { rcdName: "RCD 2" }, "lighting-3": { rcdName: "RCD 2" } },
    },
    mended: {},
  },
  {
    mistake: "Nobody measured the cable that goes up to the archive.",
    found: { circuits: { "lighting-5": { cable: undefined } } },
    mended: {},
  },
];

/**
 * Records with the site's mistakes in them, or with the mistakes mended.
 *
 * @param drawn - Records of the demo; a change that meets no record of its id throws.
 * @param state - As somebody found it, or as it was corrected.
 */
export function inState(drawn: Drawn, state: "found" | "mended"): Drawn {
  const lists = { ...drawn } as Record<string, readonly { readonly id: string }[] | undefined>;
  for (const [kind, changes] of siteFaults.flatMap((fault) => Object.entries(fault[state])))
    for (const [id, fields] of Object.entries(changes)) {
      if (!lists[kind]?.some((record) => record.id === id))
        throw new Error(`The demo has no ${id} in ${kind}`);
      lists[kind] = lists[kind].map((record) => (record.id === id ? withFields(record, fields) : record));
    }
  return lists as Drawn;
}

const withFields = <Fields extends object>(record: Fields, fields: object): Fields =>
  Object.fromEntries(
    Object.entries({ ...record, ...fields }).filter(([, value]) => value !== undefined),
  ) as Fields;
