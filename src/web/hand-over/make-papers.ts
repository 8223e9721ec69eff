import regular from "@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url";
import semibold from "@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url";
import { identityOf } from "#job";
import type { PackAnswer, PackQuestion } from "../calculate/pack-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { t } from "../texts/hand-over.ts";
import { type Language, spokenLanguage } from "../texts/language.ts";
import { remedyOf, sentenceOf } from "../texts/problems.ts";

export type PaperProgress = Extract<PackAnswer, { tell: "checking" | "drawing" }>;
export type PaperMade = Extract<PackAnswer, { tell: "made" }>;

/** Papers being made; they come to an end, or are stopped. */
export interface PapersUnderWay {
  readonly made: Promise<PaperMade>;
  readonly stop: () => void;
}

/** A building model that the job was read from. */
export type GivenFile = NonNullable<PackQuestion["model"]>;

/** Which papers are wanted; the whole pack if nothing is said. */
export interface PapersWanted {
  /** Files by the beginnings of their names. */
  readonly only?: readonly string[] | undefined;
  /** The only detector of which a setting sheet is made. */
  readonly device?: string | undefined;
  /** Id of one storey. */
  readonly storey?: string | undefined;
  /** The model that the devices are added to. */
  readonly model?: GivenFile | undefined;
  /** What the papers speak; what the screens do if absent. */
  readonly language?: Language | undefined;
  /** What the room cards speak; what the papers do if absent. */
  readonly cards?: Language | undefined;
}

/** Makes papers of the open job in a worker of their own, with no network. */
export function makePapers(
  job: OpenJob,
  of: PapersWanted & { readonly progress: (step: PaperProgress) => void },
): PapersUnderWay {
  const worker = new Worker(new URL("../calculate/pack-worker.ts", import.meta.url), {
    type: "module",
    name: "pack",
  });
  const stop = (): void => worker.terminate();
  const made = new Promise<PaperMade>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<PackAnswer>) => {
      if (data.tell === "checking" || data.tell === "drawing") {
        of.progress(data);
        return;
      }
      stop();
      if (data.tell === "made") resolve(data);
      else reject(new Error(whyNot(data)));
    };
    worker.onerror = ({ message }) => {
      stop();
      reject(new Error(message));
    };
  });
  worker.postMessage(questionOf(job, of));
  return { made, stop };
}

/** Why there are no papers, in the language of the screens. */
const whyNot = (answer: Extract<PackAnswer, { tell: "nothing" | "refused" | "trouble" }>): string => {
  switch (answer.tell) {
    case "nothing":
      return t("hand-over.nothing");
    case "refused":
      return answer.problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`).join(" ");
    case "trouble":
      return answer.sentence;
  }
};

function questionOf(job: OpenJob, { only, device, storey, model, ...asked }: PapersWanted): PackQuestion {
  const { site, kept, file, id } = job;
  const { language = spokenLanguage(), cards = language } = asked;
  return {
    site,
    job: {
      // Labels carry what all copies have in common, not what this device keeps the job under.
      id: identityOf(id),
      name: site.name,
      details: file.details,
      visit: kept.visit,
      detectors: file.detectors,
      boards: file.boards,
      circuits: file.circuits,
      testEntries: kept.testEntries,
      openPoints: kept.openPoints,
      revisions: kept.revisions,
      swaps: kept.swaps,
      signatures: kept.signatures,
      rooms: site.rooms.map(({ id: room, number, name }) => ({ id: room, number, name })),
    },
    ...(only ? { only } : {}),
    ...(device === undefined ? {} : { device }),
    ...(storey === undefined ? {} : { storey }),
    ...(model ? { model } : {}),
    language,
    cards,
    // A worker's own address is not that of the page.
    fonts: { regular: absolute(regular), semibold: absolute(semibold) },
  };
}

const absolute = (address: string): string => new URL(address, document.baseURI).href;
