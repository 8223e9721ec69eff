import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  beginJob,
  changeRecord,
  documentOfRead,
  historyOf,
  jobText,
  mergeCopy,
  parseJob,
  readJobFile,
  writeJobArchive,
} from "#job";
import { writtenPlan } from "../../test/exchange/written-plan.ts";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
const photos = [{ id: "p", type: "image/jpeg", width: 4, height: 3, data: "AQIDBA==" }];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-packed-"));
  await writeFile(join(folder, "annex.job.json"), JSON.stringify({ ...handWritten, photos }));
  await writeFile(join(folder, "store.svg"), writtenPlan);
  await writeFile(join(folder, "empty.job.zip"), "");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function told(...words: readonly string[]) {
  const { exit, out, notes } = await runHere(folder, words);
  return { exit, out, notes };
}
const bytesOf = async (file: string): Promise<Uint8Array> =>
  new Uint8Array(await readFile(join(folder, file)));

test("a job is packed and unpacked again as it was, and both say whose copies they are", async () => {
  expect(await told("import", "annex.job.json", "-o", "annex.job.zip")).toEqual({
    exit: 0,
    out: "Annex: 2 rooms, 1 detectors, 1 photographs.\n\nWritten to annex.job.zip.\n",
    notes: "",
  });
  const answer = await told("import", "annex.job.zip", "-o", "again.job.json", "--json");
  expect(JSON.parse(answer.out)).toEqual({
    id: "id-1",
    name: "Annex",
    rooms: 2,
    detectors: 1,
    photos: 1,
    history: true,
    notes: [],
  });
  const again = parseJob(await readFile(join(folder, "again.job.json"), "utf8")).job!;
  expect(again).toEqual({ ...parseJob({ ...handWritten, photos }).job!, id: "id-1" });
  await told("import", "again.job.json", "-o", "again.job.zip");
  expect(await bytesOf("again.job.zip")).toEqual(await bytesOf("annex.job.zip"));
});

test("every command that takes a job takes a packed one, and answers the same", async () => {
  await told("import", "annex.job.json", "-o", "every.job.zip");
  for (const [command, ...more] of [["check"], ["zone", "--device", "B1.01", "--kind", "towards"]] as const)
    expect(await told(command, "every.job.zip", ...more, "--json")).toEqual(
      await told(command, "annex.job.json", ...more, "--json"),
    );
  expect((await told("pack", "every.job.zip", "-o", "papers")).exit).not.toBe(2);
});

test("what is placed in a packed job keeps its history: merged back, both sides' changes are there", async () => {
  const begun = beginJob({ job: parseJob(handWritten).job! }, () => "annex");
  const here = documentOfRead({ job: parseJob(handWritten).job!, history: begun.update });
  await writeFile(join(folder, "sent.job.zip"), writeJobArchive({ history: historyOf(here), id: "annex" }));
  here.run(changeRecord("rooms", "store", { name: "Luggage store" }));
  const placed = await told(
    "place",
    "sent.job.zip",
    "-o",
    "placed.job.zip",
    "--room",
    "hall",
    "--seconds",
    "2",
  );
  expect(placed.exit).not.toBe(2);
  const back = readJobFile(await bytesOf("placed.job.zip"));
  if (!back.job) throw new Error("The placed job could not be read");
  expect(mergeCopy(here, back).how).toBe("history");
  expect(here.job().rooms.map(({ name }) => name)).toEqual(["Hall", "Luggage store"]);
  expect(here.job().detectors).toEqual(back.job.detectors);
});

test("a plan becomes a packed job with an identity of its own", async () => {
  await told("import", "store.svg", "--scale", "100", "-o", "store.job.zip");
  const read = readJobFile(await bytesOf("store.job.zip"));
  expect([read.job?.id, read.job?.rooms.length]).toEqual(["id-1", 2]);
  expect(jobText(read.job!)).toContain('"id": "id-1"');
});

test("an empty file is said to be one", async () => {
  const { exit, notes } = await told("check", "empty.job.zip");
  expect(exit).toBe(2);
  expect(notes).toContain("This file is empty.");
});

test("the version, and the help of one command in either order", async () => {
  const { version } = JSON.parse(await readFile(new URL("../../package.json", import.meta.url), "utf8"));
  expect(await told("--version")).toEqual({ exit: 0, out: `${version}\n`, notes: "" });
  expect(JSON.parse((await told("--version", "--json")).out)).toEqual({ version });
  const help = await told("help", "import");
  expect(help).toEqual(await told("import", "--help"));
  expect(help.out).toContain("roomwake import FILE -o JOB");
  expect((await told("help", "fly")).exit).toBe(2);
  expect((await told("help")).out).toContain("roomwake help COMMAND");
});
