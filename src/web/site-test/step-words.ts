import { partTitle, roomTitle, stepTitles, type WorkState, type WorkStep } from "#engine";
import type { OpenJob } from "../contract.ts";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/test.ts";
import type { WorkPlace } from "./work.ts";

/** What a step is called. */
export const stepTitle = ({ name }: Pick<WorkStep, "name">): string => spoken(stepTitles[name]);

/** What to do. */
export const stepDeed = ({ name }: WorkStep): string => t(`test.do.${name}`);

/** What a part of a step is called: a pair of conductors as it is, all else in words. */
export const partWord = (part: string): string => spoken(partTitle(part));

/** What a step is about: the circuit, the detector with its room, the luminaire. */
export function aboutWords({ site, kept }: OpenJob, { about }: Pick<WorkStep, "about">): string {
  switch (about.kind) {
    case "circuit":
      return kept.circuits.find(({ id }) => id === about.id)?.name || about.id;
    case "detector": {
      const detector = recordOf(site, "detectors", about.id);
      const room = detector && recordOf(site, "rooms", detector.room);
      return `${detector?.tag ?? about.id}${room ? ` · ${roomTitle(room)}` : ""}`;
    }
    case "luminaire":
      return nameOf(site, { kind: "luminaires", id: about.id });
    case "room":
      return roomTitle(recordOf(site, "rooms", about.id));
    default:
      return t("test.about.job");
  }
}

/** What one works on, as a heading. */
export function placeName(job: OpenJob, { order }: WorkState, at: WorkPlace): string {
  if (at.kind === "room") return roomTitle(recordOf(job.site, "rooms", at.id));
  const circuits = order.groups.find(({ id }) => id === at.id)?.circuits ?? [];
  if (circuits.length === 0) return t("test.about.job");
  return circuits.map((id) => job.kept.circuits.find((one) => one.id === id)?.name || id).join(" + ");
}
