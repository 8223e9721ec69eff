import type { Input } from "./tools/state.ts";
import { type Pixel, panned, type View, zoomed } from "./view.ts";

interface PointerPorts {
  readonly view: () => View;
  readonly setView: (view: View) => void;
  readonly input: (input: Input) => void;
  /** A finger rested on the plan: from here on it draws a box. */
  readonly rested: () => void;
  /** Space is held: dragging pans whatever lies below. */
  readonly panning: () => boolean;
  readonly hover: (pixel: Pixel | undefined, free: boolean) => void;
}

const restMilliseconds = 450;

/** What the wheel did since the last frame. */
interface Turned {
  /** Where the pointer was. */
  readonly at: WheelEvent;
  readonly factor: number;
  readonly right: number;
  readonly down: number;
}

/** Turns pointer, pinch and wheel events of the plan into inputs of its tools. @returns The way to stop listening. */
export function listenOn(host: HTMLElement, ports: PointerPorts): () => void {
  const fingers = new Map<number, Pixel>();
  let pinching: { readonly apart: number; readonly middle: Pixel } | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let moves: PointerEvent | undefined;
  let frame = 0;
  let turned: Turned | undefined;
  let turning = 0;

  const pixelOf = (event: MouseEvent): Pixel => {
    const box = host.getBoundingClientRect();
    return { px: event.clientX - box.left, py: event.clientY - box.top };
  };
  const stopResting = (): void => {
    clearTimeout(resting);
    resting = undefined;
  };
  const down = (event: PointerEvent): void => {
    if (event.button > 1) return;
    takeTurns();
    host.setPointerCapture(event.pointerId);
    const pixel = pixelOf(event);
    fingers.set(event.pointerId, pixel);
    if (fingers.size === 2) {
      stopResting();
      ports.input({ do: "cancel" });
      pinching = pinchOf(fingers);
      return;
    }
    if (fingers.size > 2) return;
    const touch = event.pointerType === "touch";
    if (touch) resting = setTimeout(ports.rested, restMilliseconds);
    ports.input({
      do: "down",
      pixel,
      shift: event.shiftKey,
      pan: event.button === 1 || ports.panning(),
      touch,
    });
  };
  /** Many moves may come in one frame: only the last one counts. */
  const move = (event: PointerEvent): void => {
    moves = event;
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      if (moves) moved(moves);
    });
  };
  const moved = (event: PointerEvent): void => {
    const pixel = pixelOf(event);
    const before = fingers.get(event.pointerId);
    if (!before) {
      ports.hover(pixel, event.altKey);
      return;
    }
    fingers.set(event.pointerId, pixel);
    if (pinching) {
      const now = pinchOf(fingers);
      if (!now) return;
      const view = zoomed(ports.view(), pinching.middle, now.apart / pinching.apart);
      ports.setView({
        ...view,
        x: view.x - (now.middle.px - pinching.middle.px) / view.scale,
        y: view.y + (now.middle.py - pinching.middle.py) / view.scale,
      });
      pinching = now;
      return;
    }
    if (Math.hypot(pixel.px - before.px, pixel.py - before.py) > 3) stopResting();
    ports.input({ do: "drag", pixel, free: event.altKey });
  };
  const up = (event: PointerEvent): void => {
    stopResting();
    if (frame && moves) {
      cancelAnimationFrame(frame);
      frame = 0;
      moved(moves);
    }
    const had = fingers.delete(event.pointerId);
    if (pinching) {
      if (fingers.size < 2) pinching = undefined;
      return;
    }
    if (!had) return;
    ports.input(event.type === "pointercancel" ? { do: "cancel" } : { do: "up", pixel: pixelOf(event) });
  };
  /** Turns of a wheel add up until the next frame, as moves do. */
  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    // A touch pad pans with two fingers and pinches as ctrl + wheel; a mouse wheel zooms.
    const mouse = event.deltaX === 0 && Math.abs(event.deltaY * lines) >= 50;
    const before = turned ?? { at: event, factor: 1, right: 0, down: 0 };
    if (event.ctrlKey || mouse) {
      const speed = event.ctrlKey && !mouse ? 0.01 : 0.0018;
      turned = { ...before, at: event, factor: before.factor * Math.exp(-event.deltaY * lines * speed) };
    } else
      turned = {
        ...before,
        right: before.right - event.deltaX * lines,
        down: before.down - event.deltaY * lines,
      };
    turning ||= requestAnimationFrame(takeTurns);
  };
  const takeTurns = (): void => {
    cancelAnimationFrame(turning);
    turning = 0;
    if (!turned) return;
    const { at, factor, right, down } = turned;
    turned = undefined;
    const view = panned(ports.view(), right, down);
    ports.setView(factor === 1 ? view : zoomed(view, pixelOf(at), factor));
  };
  const double = (event: MouseEvent): void => ports.input({ do: "double", pixel: pixelOf(event) });
  const leave = (): void => ports.hover(undefined, false);

  host.addEventListener("pointerdown", down);
  host.addEventListener("pointermove", move);
  host.addEventListener("pointerup", up);
  host.addEventListener("pointercancel", up);
  host.addEventListener("pointerleave", leave);
  host.addEventListener("wheel", wheel, { passive: false });
  host.addEventListener("dblclick", double);
  return () => {
    stopResting();
    cancelAnimationFrame(frame);
    cancelAnimationFrame(turning);
    host.removeEventListener("pointerdown", down);
    host.removeEventListener("pointermove", move);
    host.removeEventListener("pointerup", up);
    host.removeEventListener("pointercancel", up);
    host.removeEventListener("pointerleave", leave);
    host.removeEventListener("wheel", wheel);
    host.removeEventListener("dblclick", double);
  };
}

function pinchOf(
  fingers: ReadonlyMap<number, Pixel>,
): { readonly apart: number; readonly middle: Pixel } | undefined {
  const [a, b] = [...fingers.values()];
  if (!a || !b) return undefined;
  return {
    apart: Math.max(1, Math.hypot(a.px - b.px, a.py - b.py)),
    middle: { px: (a.px + b.px) / 2, py: (a.py + b.py) / 2 },
  };
}
