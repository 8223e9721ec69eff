import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { handWritten } from "./jobs.fixture.ts";
import { runHere } from "./run-here.fixture.ts";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "roomwake-papers-"));
  await writeFile(join(folder, "annex.job.json"), JSON.stringify(handWritten));
  await writeFile(join(folder, "wired.job.json"), JSON.stringify(wired));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const luminaire = (id: string, x: number) => ({
  id,
  room: "hall",
  name: "LED panel",
  at: [x, 1.5],
  power: 30,
  circuit: "Lighting 1",
});

/** The same two rooms with a board, a circuit and two luminaires. */
const wired = {
  ...handWritten,
  version: 3,
  luminaires: [luminaire("l1", 1), luminaire("l2", 4)],
  boards: [{ id: "board", name: "Board", storey: "g", at: [0.2, 0.2], system: "TN-S", voltage: 230 }],
  circuits: [{ id: "c", board: "board", name: "Lighting 1", breaker: "B", rating: 10 }],
};

const told = (...words: readonly string[]) => runHere(folder, words);

const wiringFiles = [
  "wiring.svg",
  "wiring.pdf",
  "wiring-schedules-1.svg",
  "wiring-schedules-2.svg",
  "wiring-schedules-3.svg",
  "wiring-schedules-4.svg",
  "wiring-schedules-5.svg",
  "wiring-schedules.pdf",
  "terminal-schedule.csv",
  "cable-schedule.csv",
  "box-list.csv",
  "fitting-list.csv",
];

const onlyWiring = ["--only", "wiring,terminal,cable,box,fitting"];
const onlyOffer = ["--only", "quote,price,variation"];

test("pack draws the wiring of a job that has one, and writes the same bytes the second time", async () => {
  const first = await told("pack", "wired.job.json", "-o", "a", "--json", ...onlyWiring);
  expect(first.json().noWiring).toBeNull();
  const files: readonly string[] = first.json().files;
  expect(files.filter((file) => wiringFiles.includes(file))).toEqual(wiringFiles);
  expect(await readFile(join(folder, "a", "wiring.svg"), "utf8")).toContain("! 230 V kills.");
  expect(await readFile(join(folder, "a", "terminal-schedule.csv"), "utf8")).toContain("Lighting 1");
  await told("pack", "wired.job.json", "-o", "b", "--json", ...onlyWiring);
  for (const file of files)
    expect([
      file,
      Buffer.compare(await readFile(join(folder, "a", file)), await readFile(join(folder, "b", file))),
    ]).toEqual([file, 0]);
});

test("pack of a job without wiring draws none, and says why in one line", async () => {
  const answer = await told("pack", "annex.job.json", "-o", "a", "--json");
  expect(answer.json().files.filter((file: string) => /wiring|terminal|cable|box/.test(file))).toEqual([]);
  expect(answer.json().noWiring).toBe("no circuit is on record, and no luminaire with its circuit or power.");
  const { out } = await told("pack", "annex.job.json", "-o", "b", "--only", "plan");
  expect(out).toContain(
    "No wiring sheets: no circuit is on record, and no luminaire with its circuit or power.\n",
  );
});

test("pack of a supply that is not covered draws no wiring, and says why", async () => {
  await writeFile(
    join(folder, "it.job.json"),
    JSON.stringify({ ...wired, boards: [{ ...wired.boards[0], system: "IT" }] }),
  );
  const answer = await told("pack", "it.job.json", "-o", "a", "--json");
  expect(answer.json().files).not.toContain("wiring.pdf");
  expect(answer.json().noWiring).toMatch(/IT/);
});

test("pack takes its own price list back filled in, and holds a later plan against the accepted quote", async () => {
  await told("pack", "wired.job.json", "-o", "a", "--json", ...onlyOffer);
  const form = await readFile(join(folder, "a", "price-list.csv"), "utf8");
  const filled = form
    .replace(/^(.*,piece),,/gm, "$1,12.50,")
    .replace(/^(.*,metre),,/gm, "$1,1.20,")
    .replace("working hour,hour,,", "working hour,hour,60,")
    .replace("tax,%,,", "tax,%,20,");
  expect(filled).not.toBe(form);
  await writeFile(join(folder, "prices.csv"), filled);
  const priced = await told(
    ...["pack", "wired.job.json", "-o", "b", "--prices", "prices.csv", "--json"],
    ...onlyOffer,
  );
  expect(priced.json().files).not.toContain("variation.pdf");
  const quote = await readFile(join(folder, "b", "quote.csv"), "utf8");
  // One detector and its spare: a twentieth of one is a whole one.
  expect(quote).toContain('"Round, 8 m across at 2.5 m",piece,2,12.5,25,firm');
  await writeFile(
    join(folder, "more.job.json"),
    JSON.stringify({
      ...wired,
      detectors: [...wired.detectors, { ...wired.detectors[0], id: "d2", tag: "B1.02", at: [4, 1.5] }],
    }),
  );
  const varied = await told(
    ...["pack", "more.job.json", "-o", "c", "--json"],
    ...["--prices", "prices.csv", "--accepted", "b/quote.csv"],
    ...onlyOffer,
  );
  expect(varied.json().files).toContain("variation.pdf");
  expect(await readFile(join(folder, "c", "variation.csv"), "utf8")).toContain(
    '"Round, 8 m across at 2.5 m",piece,2,3,12.5,12.5',
  );
});

test("pack refuses a price list that is wrong, with line and column, before it draws anything", async () => {
  await writeFile(join(folder, "prices.csv"), "item,unit,price\nconnector,piece,dear\n");
  const { exit, json } = await told("pack", "wired.job.json", "-o", "a", "--prices", "prices.csv", "--json");
  expect(exit).toBe(2);
  expect(json().problems[0]).toMatchObject({
    code: "price-list-value-wrong",
    message: "prices.csv, line 2, column “price”: “dear” is not a number from nought up.",
  });
});

test("pack prices by the list and the terms that the job keeps; a file that the command names comes first, and a kept list that is wrong is refused", async () => {
  const text = "item,unit,price\nconnector,piece,2\ncurrency,text,EUR\nworking hour,hour,60\ntax,%,20\n";
  const keeping = (list: string, quoteTerms: object) =>
    writeFile(
      join(folder, "kept.job.json"),
      JSON.stringify({ ...wired, details: { priceList: { file: "firm.csv", text: list }, quoteTerms } }),
    );
  const hourIn = async (...words: readonly string[]): Promise<string | undefined> => {
    await told("pack", "kept.job.json", "-o", "k", "--force", "--json", ...words);
    const quote = await readFile(join(folder, "k", "quote.csv"), "utf8");
    return /^labour,[^,]*,hour,[^,]*,([^,]*),/m.exec(quote)?.[1];
  };
  await keeping(text, { hour: 75 });
  expect(await hourIn()).toBe("75");
  await writeFile(join(folder, "other.csv"), text.replace("60", "50"));
  await keeping(text, {});
  expect(await hourIn("--prices", "other.csv")).toBe("50");
  await keeping("item,unit,price\nconnector,piece,dear\n", {});
  const { exit, json } = await told("pack", "kept.job.json", "-o", "z", "--json");
  expect(exit).toBe(2);
  expect(json().problems[0]).toMatchObject({
    code: "price-list-value-wrong",
    message: expect.stringContaining("firm.csv, line 2"),
  });
});
