import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { demoJob, type JobDetails, siteOf } from "#job";
import { siteIfc } from "#output";
import { packPapers } from "./pack-papers.ts";

const { resolve } = createRequire(import.meta.url);
const font = (file: string): Promise<Uint8Array> => readFile(resolve(`@expo-google-fonts/inter/${file}`));

/** One room of the demo with what is in it. */
const whole = demoJob();
const room = whole.rooms.find(({ number }) => number === "G.11")?.id;
const inRoom = <One extends { readonly room?: string }>(all: readonly One[]): readonly One[] =>
  all.filter((one) => one.room === room);
const demo = {
  ...whole,
  rooms: whole.rooms.filter(({ id }) => id === room),
  openings: [],
  obstacles: [],
  luminaires: inRoom(whole.luminaires),
  switches: inRoom(whole.switches),
  detectors: inRoom(whole.detectors),
};
const { site } = siteOf(demo);

async function papers(details: Partial<JobDetails>): Promise<ReadonlyMap<string, string>> {
  const { files } = await packPapers(
    {
      site,
      job: { ...demo, details: { ...demo.details, ...details } },
      only: ["quote.csv", "variation.csv"],
      language: "en",
      cards: "en",
    },
    {
      tell: () => {},
      fonts: async () => ({
        regular: await font("400Regular/Inter_400Regular.ttf"),
        semibold: await font("600SemiBold/Inter_600SemiBold.ttf"),
      }),
    },
  );
  return new Map(files.map(({ name, content }) => [name, String(content)]));
}

const list = {
  file: "firm.csv",
  text: "item,unit,price\ncurrency,text,EUR\nworking hour,hour,60\n",
};
const hourOf = (quote: string | undefined): string | undefined =>
  /^labour,[^,]*,hour,[^,]*,([^,]*),/m.exec(quote ?? "")?.[1];

test("papers made in the browser are priced by the list, the terms and the accepted quote that the job keeps", async () => {
  expect(hourOf((await papers({})).get("quote.csv"))).toBe("");
  const priced = await papers({ priceList: list });
  expect(hourOf(priced.get("quote.csv"))).toBe("60");
  expect([...priced.keys()]).toEqual(["quote.csv"]);
  expect(hourOf((await papers({ priceList: list, quoteTerms: { hour: 75 } })).get("quote.csv"))).toBe("75");
  const accepted = (priced.get("quote.csv") ?? "").replace(/^(labour,[^,]*,hour,)[^,]*/m, "$11");
  const varied = await papers({ priceList: list, acceptedQuote: { file: "quote.csv", text: accepted } });
  expect([...varied.keys()].toSorted()).toEqual(["quote.csv", "variation.csv"]);
  expect(varied.get("variation.csv")).toMatch(/^labour,[^,]*,hour,1,/m);
});

test("a kept list that cannot be read is refused with its line", async () => {
  const text = "item,unit,price\nconnector,piece,dear\n";
  await expect(papers({ priceList: { file: "firm.csv", text } })).rejects.toThrow("firm.csv, line 2");
});

test("papers made in the browser put the devices into the model that was given, or say why not", async () => {
  const made = siteIfc({ ...site, detectors: [] }, { job: "x", site: "", drawnBy: "", created: new Date(0) });
  const given = (text: string) =>
    packPapers(
      {
        site,
        job: demo,
        only: ["building.ifc"],
        language: "en",
        cards: "en",
        model: { name: "given.ifc", bytes: new TextEncoder().encode(text), shift: [0, 0] },
      },
      { tell: () => {}, fonts: async () => ({ regular: new Uint8Array(), semibold: new Uint8Array() }) },
    );
  const [file] = (await given(made)).files;
  const filled = new TextDecoder().decode(file!.content as Uint8Array);
  expect(filled.split("=IFCSENSOR(").length - 1).toBe(site.detectors.length);
  expect(filled.startsWith(made.slice(0, made.lastIndexOf("ENDSEC;") - 1))).toBe(true);
  await expect(given(filled)).rejects.toThrow("given.ifc has detectors of this job in it already.");
  await expect(given("nothing")).rejects.toThrow();
});
