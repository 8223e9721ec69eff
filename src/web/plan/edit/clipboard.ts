import type { Point } from "#engine";
import type { EditActions } from "../../shell/edit-actions.ts";
import { toPoint, type View } from "../view.ts";

interface ClipboardPorts {
  readonly view: () => View;
  readonly actions: Pick<EditActions, "clip" | "paste" | "remove">;
}

/**
 * Lets the plan take part in copy, cut and paste of the browser, while it has the keyboard: no permission is asked for. What is
 * pasted lands where the pointer is, or in the middle of what one sees. @returns The way to stop.
 */
export function clipboardOn(host: HTMLElement, { view, actions }: ClipboardPorts): () => void {
  let last: PointerEvent | undefined;
  /** Some systems paste what is selected anywhere with the middle button; here that button moves the plan. */
  let middle = false;
  const moved = (event: PointerEvent): void => {
    last = event.pointerType === "touch" ? undefined : event;
  };
  const pressed = (event: PointerEvent): void => {
    if (event.button === 1) middle = true;
  };
  const released = (): void => {
    setTimeout(() => {
      middle = false;
    });
  };
  const left = (): void => {
    last = undefined;
  };
  /** Asked for where it is needed alone: to know where the plan lies makes the browser lay out the page. */
  const pointer = (): { readonly px: number; readonly py: number } | undefined => {
    if (!last) return undefined;
    const box = host.getBoundingClientRect();
    return { px: last.clientX - box.left, py: last.clientY - box.top };
  };
  const ours = (): boolean => document.activeElement === host;
  const copy = (event: ClipboardEvent): void => {
    const text = ours() ? actions.clip() : "";
    if (text === "") return;
    event.clipboardData?.setData("text/plain", text);
    event.preventDefault();
    if (event.type === "cut") actions.remove();
  };
  const paste = (event: ClipboardEvent): void => {
    if (!ours()) return;
    event.preventDefault();
    if (middle) return;
    actions.paste(event.clipboardData?.getData("text/plain") ?? "", placeFor(view(), pointer()));
  };
  host.addEventListener("pointermove", moved);
  host.addEventListener("pointerdown", pressed);
  host.addEventListener("pointerup", released);
  host.addEventListener("pointercancel", released);
  host.addEventListener("pointerleave", left);
  document.addEventListener("copy", copy);
  document.addEventListener("cut", copy);
  document.addEventListener("paste", paste);
  return () => {
    host.removeEventListener("pointermove", moved);
    host.removeEventListener("pointerdown", pressed);
    host.removeEventListener("pointerup", released);
    host.removeEventListener("pointercancel", released);
    host.removeEventListener("pointerleave", left);
    document.removeEventListener("copy", copy);
    document.removeEventListener("cut", copy);
    document.removeEventListener("paste", paste);
  };
}

/** Where what is pasted lands: at the pointer, else in the middle of what one sees. */
export const placeFor = (view: View, pointer?: { readonly px: number; readonly py: number }): Point =>
  pointer ? toPoint(view, pointer) : [view.x, view.y];
