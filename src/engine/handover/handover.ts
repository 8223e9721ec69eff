import type { Check, Said } from "../check/index.ts";
import type { RoomCoverage } from "../coverage/index.ts";
import type { ZoneKind } from "../detector/index.ts";
import type { Region } from "../geometry/index.ts";
import type { SquareMetres } from "../quantity/index.ts";
import type { Finding, SiteSettings } from "../review/index.ts";
import type { Room, Site } from "../site/index.ts";
import type {
  DeviceSwap,
  RoomVerdict,
  SampleState,
  SamplingRule,
  SiteEntry,
  StepState,
  WorkOrder,
} from "../site-test/index.ts";
import type { SourceId } from "../source/index.ts";
import type { BuiltWiring, FoundInstallation, WiringReview } from "../wiring/index.ts";
import type { CareRecord } from "./care-record.ts";
import type { Difference } from "./differences.ts";
import type { RevisionRecord } from "./revisions.ts";

/** What a detector sees, doors closed. */
export interface ZoneOfDevice {
  readonly device: string;
  readonly kind: ZoneKind;
  readonly region: Region;
}

/** One room with everything that its page says. */
export interface RoomRecord {
  readonly room: Room;
  /** Name on paper. */
  readonly title: string;
  readonly storey: string;
  readonly area: SquareMetres;
  /** Ids of the detectors that switch its light. */
  readonly detectors: readonly string[];
  readonly coverage: RoomCoverage;
  readonly findings: readonly Finding[];
  /** The walk test, where a station of it was read. */
  readonly walked: RoomVerdict | undefined;
}

/** Wiring to be drawn; or why there is none. */
export type WiringRecord =
  | {
      readonly kind: "built";
      readonly found: FoundInstallation;
      readonly built: BuiltWiring;
      readonly review: WiringReview;
      /** What of it is not covered, in sentences; undefined: all of it is. */
      readonly refused: Said | undefined;
    }
  | { readonly kind: "none"; readonly reason: Said };

/** Something that the papers rest on, with what was said of it and how often. */
export interface SourceUse {
  readonly id: SourceId;
  /** What was judged by it, in the words of the trade. */
  readonly used: readonly Said[];
}

/** A step of the order of work with where it stands, and the entry that counts for it. */
export interface TestLine {
  readonly state: StepState;
  readonly entries: readonly SiteEntry[];
}

/** Everything that is handed over, as data: no words of the paper, no sizes, no pages. */
export interface Handover {
  readonly site: Site;
  readonly rooms: readonly RoomRecord[];
  readonly zones: readonly ZoneOfDevice[];
  readonly settings: SiteSettings;
  readonly wiring: WiringRecord;
  /** All findings in reading order. */
  readonly findings: readonly Finding[];
  readonly checks: readonly Check[];
  readonly order: WorkOrder;
  /** In the order of initial verification. */
  readonly tests: readonly TestLine[];
  /** The sample that a code has tested; undefined: every detector. */
  readonly sample: { readonly rule: SamplingRule["id"]; readonly groups: readonly SampleState[] } | undefined;
  /** Detectors that were exchanged. */
  readonly swaps: readonly DeviceSwap[];
  /** What was entered of devices that are gone, in the order of time. */
  readonly before: readonly SiteEntry[];
  /** Visits after hand-over; undefined: nothing was handed over yet. */
  readonly care: CareRecord | undefined;
  /** What was handed over before, the earliest first, each with what it changed. */
  readonly revisions: readonly RevisionRecord[];
  /** What was changed since the last of them; undefined: nothing was handed over yet, or nobody kept what. */
  readonly since: readonly Difference[] | undefined;
  /** What was taken for granted, each sentence once, with how often. */
  readonly assumptions: readonly { readonly text: Said; readonly times: number }[];
  readonly sources: readonly SourceUse[];
}
