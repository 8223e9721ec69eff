import type { PlaceAnswer, PlaceQuestion } from "./protocol.ts";

const tell = (answer: PlaceAnswer): void => postMessage(answer);

addEventListener("message", ({ data }: MessageEvent<PlaceQuestion>) => {
  if (data.ask === "place") tell({ tell: "trouble", sentence: "Placing is not there yet." });
});
