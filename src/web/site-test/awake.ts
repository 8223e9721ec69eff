import { useEffect } from "react";

/** Keeps the screen of a phone lit while something is tested, where the device can. */
export function useAwake(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let ended = false;
    const hold = (): void => {
      if (document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
      navigator.wakeLock.request("screen").then(
        (held) => {
          if (ended) void held.release();
          else lock = held;
        },
        // A device that is low on power refuses.
        () => undefined,
      );
    };
    hold();
    document.addEventListener("visibilitychange", hold);
    return () => {
      ended = true;
      document.removeEventListener("visibilitychange", hold);
      void lock?.release();
    };
  }, []);
}

/** A short hum that is felt through a glove, where the device can: once for done, three times for a time that is up. */
export function hum(how: "done" | "time-up"): void {
  if ("vibrate" in navigator) navigator.vibrate(how === "done" ? 40 : [120, 80, 120, 80, 120]);
}

let audio: AudioContext | undefined;

/** A short tone, for a phone in the pocket. Silent where the page may not sound. */
export function tone(how: "done" | "time-up"): void {
  if (typeof AudioContext === "undefined") return;
  audio ??= new AudioContext();
  const { currentTime } = audio;
  const [source, level] = [audio.createOscillator(), audio.createGain()];
  source.frequency.value = how === "done" ? 880 : 660;
  level.gain.setValueAtTime(0.15, currentTime);
  level.gain.exponentialRampToValueAtTime(0.001, currentTime + (how === "done" ? 0.12 : 0.6));
  source.connect(level).connect(audio.destination);
  source.start(currentTime);
  source.stop(currentTime + 0.7);
}
