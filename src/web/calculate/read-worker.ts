import singleThread from "web-ifc/web-ifc.wasm?url";
import { remedyOf, sentenceOf } from "#engine";
import { readIfc } from "#exchange";
import type { ReadAnswer, ReadQuestion } from "./protocol.ts";

const tell = (answer: ReadAnswer): void => postMessage(answer);

/** Reads one building model and is ended after it: whatever a file does to it stays in here. */
addEventListener("message", async ({ data }: MessageEvent<ReadQuestion>) => {
  try {
    const result = await readIfc(new Uint8Array(data.bytes), {
      fileName: data.name,
      kernel: { wasm: () => new URL(singleThread, import.meta.url).href },
      progress: (text, share) => tell({ tell: "progress", text, share }),
    });
    if ("problems" in result) {
      tell({
        tell: "refused",
        sentences: result.problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`),
      });
      return;
    }
    const { survey, report } = result;
    tell({
      tell: "read",
      read: {
        site: {
          storeys: survey.storeys,
          rooms: survey.rooms,
          openings: survey.openings,
          obstacles: survey.obstacles,
          dwellPlaces: survey.dwellPlaces,
          interference: survey.interference,
          luminaires: survey.luminaires,
          floorPieces: survey.floorPieces,
        },
        underlay: survey.underlay,
        leftOut: report.leftOut,
        problems: report.notes.map((problem) => ({
          message: sentenceOf(problem),
          remedy: remedyOf(problem),
        })),
      },
    });
  } catch (trouble) {
    tell({ tell: "refused", sentences: [trouble instanceof Error ? trouble.message : String(trouble)] });
  }
});
