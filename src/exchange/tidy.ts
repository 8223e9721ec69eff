import type { Metres } from "#engine";

/** A length to a tenth of a millimetre: finer than anything is built, short in a file. Never −0. [m] */
export const tidy = (metres: Metres): Metres => Math.round(metres * 1e4) / 1e4 + 0;
