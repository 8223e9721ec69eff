import type { Site } from "#engine";

/** The next tag in the manner of the tags there are: B1.04 → B1.05. */
export function freeTag(site: Site): string {
  const taken = new Set(site.detectors.map((device) => device.tag));
  const last = [...taken].sort((a, b) => a.localeCompare(b, "en", { numeric: true })).at(-1) ?? "B1.00";
  const found = /^(.*?)(\d+)$/.exec(last);
  const [stem, digits] = found ? [found[1] as string, found[2] as string] : [`${last}.`, "00"];
  for (let n = Number(digits) + 1; ; n++) {
    const tag = `${stem}${String(n).padStart(digits.length, "0")}`;
    if (!taken.has(tag)) return tag;
  }
}
