import { zipSync } from "fflate";
import { type PackFile, slugOf } from "#output";
import { PapersRefused, packPapers } from "./pack-papers.ts";
import type { PackAnswer, PackQuestion } from "./pack-protocol.ts";

const tell = (answer: PackAnswer): void => postMessage(answer);

// Makes the papers of one job beside the screen, from nothing but the job: it is ended after them, or when somebody stops it.
addEventListener("message", async ({ data: question }: MessageEvent<PackQuestion>) => {
  try {
    const { files, created } = await packPapers(question, {
      tell,
      fonts: async () => {
        const [regular, semibold] = await Promise.all(
          [question.fonts.regular, question.fonts.semibold].map(async (address) => {
            const answer = await fetch(address);
            if (!answer.ok) throw new Error(`The lettering was not found (${answer.status}).`);
            return new Uint8Array(await answer.arrayBuffer());
          }),
        );
        return { regular: regular!, semibold: semibold! };
      },
    });
    const [first] = files;
    if (!first) return tell({ tell: "nothing" });
    const made = files.length === 1 ? alone(first) : together(files, created);
    tell({ tell: "made", name: archiveName(question), ...made });
  } catch (trouble) {
    if (trouble instanceof PapersRefused) return tell({ tell: "refused", problems: trouble.problems });
    tell({ tell: "trouble", sentence: trouble instanceof Error ? trouble.message : String(trouble) });
  }
});

const types: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml",
  csv: "text/csv",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

const alone = ({ name, content }: PackFile) => ({
  name,
  type: types[name.slice(name.lastIndexOf(".") + 1)] ?? "application/octet-stream",
  bytes: bytesOf(content),
});

const archiveName = ({ site, job, storey, only }: PackQuestion): string => {
  const of = [job.name, site.storeys.find(({ id }) => id === storey)?.name ?? ""].map(slugOf).filter(Boolean);
  return `${of.join("-") || "job"}-${only ? "papers" : "hand-over"}.zip`;
};

/** One archive, stamped with the job's own day: what a mail programme takes, and a phone can hand on. */
const together = (files: readonly PackFile[], created: Date) => ({
  type: "application/zip",
  bytes: zipSync(Object.fromEntries(files.map(({ name, content }) => [name, bytesOf(content)])), {
    mtime: new Date(created.getUTCFullYear(), created.getUTCMonth(), created.getUTCDate()),
    level: 6,
  }),
});

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === "string" ? new TextEncoder().encode(content) : content;
