import { useEffect, useState } from "react";
import { daySeconds, type Seconds } from "#engine";

/** Seconds of the day in a second of the clock. */
export const speeds = [60, 600, 3600] as const;

/** The time on show, and whether it runs. Where less motion is asked for, it goes on in steps of a second. */
export function usePlay(start: Seconds) {
  const [now, setNow] = useState(start);
  const [speed, setSpeed] = useState<(typeof speeds)[number]>(600);
  const [playing, setPlaying] = useState(false);
  useEffect(() => {
    if (!playing) return;
    const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const every = calm ? 1000 : 50;
    let last = performance.now();
    const tick = setInterval(() => {
      const time = performance.now();
      const by = ((time - last) / 1000) * speed;
      last = time;
      setNow((at) => {
        if (at + by < daySeconds) return at + by;
        setPlaying(false);
        return daySeconds;
      });
    }, every);
    return () => clearInterval(tick);
  }, [playing, speed]);
  return {
    now,
    speed,
    playing,
    setSpeed,
    show: (time: Seconds) => setNow(Math.min(daySeconds, Math.max(0, time))),
    play: () => {
      if (!playing && now >= daySeconds) setNow(0);
      setPlaying(!playing);
    },
  };
}
