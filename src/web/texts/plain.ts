import type { MessageFormatElement } from "@formatjs/icu-messageformat-parser";

/** A sentence as it is written in the catalogue, or, in a built page, as the build has read it already. */
export type Message = string | MessageFormatElement[];

/** A sentence with nothing to fill and nothing quoted stands for itself. */
export const isPlain = (message: Message): message is string =>
  typeof message === "string" && !/[{}]|''/.test(message);
