import { type AskedDrawing, askedDrawing, surveyRoomAt } from "#exchange";
import { linesOfText } from "#job";
import type { RoomAtAnswer, RoomAtQuestion } from "./room-at-protocol.ts";

/** The drawings that were asked before, ready to be asked again. */
const known = new Map<string, AskedDrawing>();

addEventListener("message", ({ data }: MessageEvent<RoomAtQuestion>) => {
  const answer = (found: RoomAtAnswer["found"]): void =>
    postMessage({ number: data.number, found } satisfies RoomAtAnswer);
  try {
    for (const { key, drawing } of data.drawings) {
      if (drawing) {
        const packed = linesOfText(drawing.lines);
        if (!packed) continue;
        const [c, s] = [Math.cos((drawing.turn * Math.PI) / 180), Math.sin((drawing.turn * Math.PI) / 180)];
        const lines = new Float64Array(packed.lines.length);
        for (let i = 0; i + 1 < lines.length; i += 2) {
          const [x, y] = [packed.lines[i]!, packed.lines[i + 1]!];
          lines[i] = drawing.origin[0] + x * c - y * s;
          lines[i + 1] = drawing.origin[1] + x * s + y * c;
        }
        known.set(
          key,
          askedDrawing({ file: drawing.file, lines, layerOf: packed.layerOf, layers: drawing.layers }),
        );
      }
      const asked = known.get(key);
      const found = asked && surveyRoomAt(asked, data.point, data.of);
      if (found) return answer(found);
    }
    answer(undefined);
  } catch {
    // A drawing that cannot be asked holds no room.
    answer(undefined);
  }
});
