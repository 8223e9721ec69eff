import { type Said, say } from "../check/index.ts";
import type { Contact } from "../detector/index.ts";
import type { WiringModel } from "./model.ts";
import type { SwitchedGroup } from "./switched-group.ts";
import type { WiringCheck } from "./wiring-check.ts";

/** A contact with the whole load that it may have to carry alone. */
export interface ContactCase {
  readonly model: WiringModel;
  readonly group: SwitchedGroup;
  readonly tag: string;
  readonly id: string;
  readonly room?: string;
  readonly contact: Contact | undefined;
}

/** Whose the evidence of a check is. @param tag - Of the detector, or the name of the contactor. @param id - Its record. @param room - Where it hangs. @returns Name, room and records. @example B1 in the store: name B1, room store */
export const evidence = ({
  tag,
  id,
  room,
}: Pick<ContactCase, "tag" | "id" | "room">): Pick<WiringCheck, "name" | "room" | "records"> => ({
  name: tag,
  ...(room === undefined ? {} : { room }),
  records: [id],
});

/** Why one of several contacts is held against the whole load. @param detectors - Of the group. @returns A sentence where there are several. @example One detector: none */
export const alone = ({ detectors }: SwitchedGroup): readonly Said[] =>
  detectors.length > 1 ? [say`Joined contacts do not add up: this one may carry the whole load alone`] : [];
