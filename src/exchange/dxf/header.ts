import type { HeaderVariables } from "./sections.ts";

/** What a drawing says of itself. */
export interface DxfHeader {
  /** Number behind AC in the release mark: 1015 …; 0 where there is none. */
  readonly release: number;
  /** The release as people call it: "R2000"; "unknown". */
  readonly releaseName: string;
  readonly codePage: string;
  /** Unit code as written; undefined where the header has none. */
  readonly units: number | undefined;
  /** Lengths are shown in feet and inches, which makes a unit an inch. */
  readonly feetAndInches: boolean;
  /** Least x, least y, largest x, largest y as the file says; undefined where absent or turned round. */
  readonly box: readonly [number, number, number, number] | undefined;
}

const releases: Readonly<Record<number, string>> = {
  1006: "R10",
  1009: "R12",
  1012: "R13",
  1014: "R14",
  1015: "R2000",
  1018: "R2004",
  1021: "R2007",
  1024: "R2010",
  1027: "R2013",
  1032: "R2018",
};

/** The header's words, those that are read here. */
export function headerOfDrawing(variables: HeaderVariables): DxfHeader {
  const number = (name: string, code: number): number => variables.get(name)?.get(code)?.number ?? Number.NaN;
  const units = number("$INSUNITS", 70);
  const notation = number("$LUNITS", 70);
  const release = releaseOf(variables);
  const box = [
    number("$EXTMIN", 10),
    number("$EXTMIN", 20),
    number("$EXTMAX", 10),
    number("$EXTMAX", 20),
  ] as const;
  return {
    release,
    releaseName: releases[release] ?? (release > 1032 ? "newer than R2018" : "unknown"),
    codePage: variables.get("$DWGCODEPAGE")?.get(3)?.text ?? "",
    units: Number.isFinite(units) ? units : undefined,
    feetAndInches: notation === 3 || notation === 4,
    box: box.every(Number.isFinite) && box[0] < box[2] && box[1] < box[3] ? box : undefined,
  };
}

/** The release stands in the first variable, as AC and four digits. */
const releaseOf = (variables: HeaderVariables): number => {
  for (const groups of variables.values()) {
    const mark = /^AC(\d{4})$/.exec(groups.get(1)?.text ?? "");
    if (mark) return Number(mark[1]);
  }
  return 0;
};
