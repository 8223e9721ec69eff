import { answerLine } from "./answer-line.ts";
import { dayAnswer } from "./day-answer.ts";

// Simulates days beside the screen.
answerLine(dayAnswer);
