import { type Source, sources } from "#engine";

const certainty: Readonly<Record<Source["certainty"], string>> = {
  read: "read in the source",
  secondary: "read in another's account of it",
  "from-memory": "from memory",
  derived: "derived here",
  "common-practice": "common practice, no source",
};

const cell = (text: string | undefined): string => (text ?? "").replaceAll("|", "\\|").replaceAll("\n", " ");

/** The page that lists every source, in the order of the register. */
export function sourcesPage(): string {
  const rows = Object.entries(sources).map(
    ([id, source]) =>
      `| ${id} | ${cell(source.title)} | ${cell([source.edition, source.clause].filter(Boolean).join(", "))} | ${certainty[source.certainty]}${source.verify ? "; **verify**" : ""} | ${cell(source.note)} |`,
  );
  return [
    "# Sources",
    "",
    "Printed from the register in `src/engine/source` by `npm run sources`. What is marked **verify** is shown as such wherever a number from it is used.",
    "",
    "| name | what | edition, clause | how sure | note |",
    "|---|---|---|---|---|",
    ...rows,
    "",
  ].join("\n");
}
