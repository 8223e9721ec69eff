import type { Site, Station } from "#engine";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import { lengthText, type Units } from "../texts/index.ts";
import { withinSentence } from "../texts/language.ts";
import { t } from "../texts/test.ts";

/** What a station is called, in a list and above its instruction. */
export function stationTitle(site: Site, station: Station): string {
  return t(`test.station.${station.kind}`, { what: subjectOf(site, station) });
}

/** What to do there, in the second person. */
export function stationDeed(site: Site, station: Station, units: Units): string {
  const { kind, expected } = station;
  const what = subjectOf(site, station);
  const distance = "distance" in expected ? lengthText(expected.distance, units) : "";
  const device = devicesOf(site, station);
  if (kind === "still" && station.heard) return t("test.deed.still.heard", { what, device });
  return t(`test.deed.${kind}`, { what, device, distance });
}

/** The words of the two answers: what should be seen first. */
export const answersOf = ({ expected }: Station): { readonly good: string; readonly bad: string } => {
  switch (expected.kind) {
    case "not-seen":
      return { good: t("test.answer.stayed-off"), bad: t("test.answer.came-on") };
    case "lit-within":
      return { good: t("test.answer.lit"), bad: t("test.answer.dark") };
    default:
      return { good: t("test.answer.seen"), bad: t("test.answer.not-seen") };
  }
};

/** What the plan expects, in a few words: "first seen from 3.40 m". */
export function expectedText({ expected }: Station, units: Units): string {
  switch (expected.kind) {
    case "seen":
      return t("test.expected.seen");
    case "not-seen":
      return t("test.expected.not-seen");
    default:
      return t(`test.expected.${expected.kind}`, { distance: lengthText(expected.distance, units) });
  }
}

/** Tags of the detectors that are tested, the likeliest first. */
export const devicesOf = (site: Site, { devices }: Station): string =>
  devices
    .slice(0, 2)
    .map((id) => recordOf(site, "detectors", id)?.tag || id)
    .join(", ");

function subjectOf(site: Site, station: Station): string {
  const { kind, id } = station.subject;
  switch (kind) {
    case "opening": {
      const opening = recordOf(site, "openings", id);
      const other = opening?.rooms.find((room) => room !== station.room) ?? null;
      const door = withinSentence(nameOf(site, { kind: "openings", id }));
      return other === null
        ? t("test.subject.door-outside", { door })
        : t("test.subject.door", { door, room: nameOf(site, { kind: "rooms", id: other }) });
    }
    case "device":
      return recordOf(site, "detectors", id)?.tag || id;
    case "dwell-place":
      return withinSentence(nameOf(site, { kind: "dwellPlaces", id }));
    case "obstacle":
      return withinSentence(nameOf(site, { kind: "obstacles", id }));
    case "corner":
    case "room":
      return nameOf(site, { kind: "rooms", id: station.room });
  }
}
