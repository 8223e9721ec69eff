import { useEffect, useRef, useState } from "react";
import { t } from "../texts/label-scan.ts";
import { codeReader } from "./code-reader.ts";

type State = "starting" | "looking" | "denied" | "none" | "not-secure";

/** Pause between two looks at the camera's picture: the hand needs longer, and the battery is saved. [ms] */
const pause = 150;

/** What the camera behind the device sees, looked through for codes. It stops when it leaves the screen. */
export function Camera({ onCode }: { readonly onCode: (text: string) => void }) {
  const video = useRef<HTMLVideoElement | null>(null);
  const tell = useRef(onCode);
  tell.current = onCode;
  const [state, setState] = useState<State>("starting");
  useEffect(() => {
    const over = new AbortController();
    let stream: MediaStream | undefined;
    const run = async (): Promise<void> => {
      const { mediaDevices } = navigator;
      // biome-ignore lint/complexity/useOptionalChain: pages over plain HTTP have no such thing, whatever its type says
      if (!mediaDevices || !mediaDevices.getUserMedia) return setState("not-secure");
      stream = await mediaDevices.getUserMedia({
        video: { facingMode: "environment", width: { ideal: 1280 } },
      });
      const shown = video.current;
      if (over.signal.aborted || !shown) return;
      shown.srcObject = stream;
      await shown.play();
      setState("looking");
      const read = await codeReader();
      while (!over.signal.aborted) {
        const [text] = shown.readyState >= shown.HAVE_CURRENT_DATA ? await read(shown) : [];
        if (text !== undefined && !over.signal.aborted) tell.current(text);
        await new Promise((done) => setTimeout(done, pause));
      }
    };
    run()
      .catch((cause: unknown) => {
        if (!over.signal.aborted)
          setState(cause instanceof DOMException && cause.name === "NotAllowedError" ? "denied" : "none");
      })
      .finally(() => {
        if (over.signal.aborted) for (const track of stream?.getTracks() ?? []) track.stop();
      });
    return () => {
      over.abort();
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
  }, []);
  const there = state === "starting" || state === "looking";
  return (
    <>
      <video
        ref={video}
        className="label-camera"
        aria-label={t("label.camera")}
        hidden={!there}
        muted
        playsInline
      />
      <p className={there ? "hint" : ""} role="status">
        {t(`label.camera.${state}`)}
      </p>
    </>
  );
}
