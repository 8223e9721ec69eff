import { drawsFrom, seedFor } from "../../../day/chance.ts";
import type { Draw } from "./plan.fixture.ts";

/** Numbers for one purpose of one seed. */
export const drawsOf = (seed: number, name: string): Draw => drawsFrom(seedFor(seed, name));
