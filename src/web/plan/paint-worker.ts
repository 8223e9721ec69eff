import regular from "@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url";
import strong from "@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url";
import { take } from "../texts/language.ts";
import { forgetLetters } from "./paint/surface.ts";
import type { PaintAnswer, PaintQuestion } from "./paint-asked.ts";
import { type Painting, paintingOn } from "./painting.ts";

/** Paints the plan beside the page, so that neither hand nor keyboard ever waits for it. */
let painting: Painting | undefined;

const tell = (answer: PaintAnswer): void =>
  postMessage(answer, {
    transfer: answer.tell === "painted" && answer.bitmap ? [answer.bitmap] : [],
  });

addEventListener("message", ({ data }: MessageEvent<PaintQuestion>) => {
  if (data.ask === "speak") take({ ...data.spoken, problems: {} });
  else if (data.ask === "canvases") painting = paintingOn(data, tell);
  else painting?.change(data.change);
});

/** The page's faces are not there in a worker; until they are, and where they cannot be had, the system's letters do. */
const faces = (self as unknown as { readonly fonts: FontFaceSet }).fonts;
void Promise.all(
  [
    { address: regular, weight: "400" },
    { address: strong, weight: "600" },
  ].map(async ({ address, weight }) => {
    const face = new FontFace("Inter", `url(${new URL(address, import.meta.url).href})`, { weight });
    faces.add(await face.load());
  }),
)
  .then(() => {
    forgetLetters();
    painting?.afresh();
  })
  .catch(() => {});
