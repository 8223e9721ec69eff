import { answerLine } from "./answer-line.ts";
import { wiringKnown } from "./wiring-known.ts";

// Calculates the wiring beside the screen.
answerLine(wiringKnown);
