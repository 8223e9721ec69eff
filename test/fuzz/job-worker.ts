import { readFileSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";
import { catalogue, entryOf, findingsOf, type Problem, type Review, reviewSite, type Site } from "#engine";
import { type JobFile, parseJob, siteKinds, siteOf } from "#job";
import { mutatedJob } from "./mutated-job.ts";

/** What became of one mutated job file. */
export interface JobOutcome {
  readonly seed: number;
  readonly outcome: "read" | "refused" | "crashed" | "silently lost" | "not a number" | "unsaid";
  /** Codes of the problems, or what broke the law. */
  readonly detail: string;
  /** Time that it took. [ms] */
  readonly time: number;
}

/** A field "__proto__" of a file got into all objects. */
const spoilt = { outcome: "crashed", detail: "a file wrote into the prototype of all objects" } as const;

const { from, to } = workerData as { from: number; to: number };
const whole = JSON.parse(
  readFileSync(new URL("../../examples/saltmarsh.job.json", import.meta.url), "utf8"),
) as Record<string, unknown>;

for (let seed = from; seed < to; seed++) {
  parentPort!.postMessage({ begin: seed });
  const bytes = mutatedJob(whole, seed);
  const start = performance.now();
  const found = outcomeOf(bytes);
  const outcome = "polluted" in {} ? spoilt : found;
  parentPort!.postMessage({ ...outcome, seed, time: performance.now() - start });
}

function outcomeOf(bytes: Uint8Array): Pick<JobOutcome, "outcome" | "detail"> {
  try {
    const parsed = parseJob(new TextDecoder().decode(bytes));
    if (!parsed.job) {
      const codes = parsed.problems.map((problem) => problem.code);
      if (codes.length === 0) return { outcome: "silently lost", detail: "refused without a problem" };
      return { outcome: unsaid(parsed.problems) ? "unsaid" : "refused", detail: codes.join() };
    }
    const { site, problems } = siteOf(parsed.job);
    const lost = lostRecords({ bytes, job: parsed.job, site, problems });
    if (lost) return { outcome: "silently lost", detail: lost };
    const review = reviewSite(site);
    const dark = emptyRoom(site, review);
    if (dark) return { outcome: "silently lost", detail: dark };
    const wrong = notFinite(review.rooms, "rooms") ?? notFinite(review.findings, "findings");
    if (wrong) return { outcome: "not a number", detail: wrong };
    const said = unsaid([...parsed.notes, ...problems]) ?? unsaidText(review);
    if (said) return { outcome: "unsaid", detail: said };
    return { outcome: "read", detail: review.findings.map((finding) => finding.code).join() };
  } catch (error) {
    return {
      outcome: "crashed",
      detail: error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error),
    };
  }
}

/** Every record of the file comes out, or a problem names it. */
function lostRecords(of: {
  readonly bytes: Uint8Array;
  readonly job: JobFile;
  readonly site: Site;
  readonly problems: readonly Problem[];
}): string | undefined {
  const file = JSON.parse(new TextDecoder().decode(of.bytes).replace(/^\uFEFF/, "")) as Record<
    string,
    unknown
  >;
  for (const kind of siteKinds) {
    const written = Object.hasOwn(file, kind) ? file[kind] : [];
    const count = Array.isArray(written) ? written.length : 0;
    const named = new Set(of.problems.flatMap((problem) => problem.records ?? []));
    const kept = new Set(of.site[kind].map((record) => record.id));
    if (of.job[kind].length < count) return `${count - of.job[kind].length} ${kind} vanished while reading`;
    const gone = of.job[kind].find((record) => !kept.has(record.id) && !named.has(record.id));
    if (gone) return `${kind} ${gone.id} was left out and nothing says so`;
  }
  return undefined;
}

/** A room has demand, or a finding says what is wrong with it. */
function emptyRoom(site: Site, review: Review): string | undefined {
  if (review.rooms.length !== site.rooms.length)
    return `${site.rooms.length} rooms in, ${review.rooms.length} out`;
  const { demand } =
    review.rooms.find(
      ({ room, demand: asked }) =>
        asked.standing.length === 0 && !review.findings.some((finding) => finding.room === room),
    ) ?? {};
  return demand && `room ${demand.room} has no floor to stand on and no finding`;
}

/** Path to the first number that is none. */
function notFinite(value: unknown, path: string): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const wrong = notFinite(inner, `${path}.${key}`);
    if (wrong) return wrong;
  }
  return undefined;
}

/** A code that the catalogue lacks, or a sentence in which a value is missing. */
function unsaid(problems: readonly Problem[]): string | undefined {
  const strange = problems.find((problem) => !Object.hasOwn(catalogue, problem.code) || !entryOf(problem));
  if (strange) return `no catalogue entry ${strange.code}`;
  return problems.map(missingValue).find((said) => said !== undefined);
}

function missingValue(problem: Problem): string | undefined {
  const { message, remedy } = entryOf(problem);
  const wanted = [...`${message} ${remedy}`.matchAll(/\{(\w+)\}/g)].map((match) => match[1]!);
  const absent = wanted.find((name) => {
    const value = problem.values[name];
    return value === undefined || (typeof value === "number" && !Number.isFinite(value));
  });
  return absent && `${problem.code} lacks ${absent}: ${findingsOf([problem])[0]!.message}`;
}

/** A sentence that speaks of a value that is none. */
function unsaidText(review: Review): string | undefined {
  return review.findings
    .map((finding) => `${finding.message} ${finding.remedy}`)
    .find((text) => /\bNaN (m|°|s)|\bundefined\b|\[object/.test(text));
}
