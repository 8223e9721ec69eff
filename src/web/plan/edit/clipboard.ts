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
  let pointer: { readonly px: number; readonly py: number } | undefined;
  const moved = (event: PointerEvent): void => {
    const box = host.getBoundingClientRect();
    pointer =
      event.pointerType === "touch"
        ? undefined
        : { px: event.clientX - box.left, py: event.clientY - box.top };
  };
  const left = (): void => {
    pointer = undefined;
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
    actions.paste(event.clipboardData?.getData("text/plain") ?? "", placeFor(view(), pointer));
  };
  host.addEventListener("pointermove", moved);
  host.addEventListener("pointerleave", left);
  document.addEventListener("copy", copy);
  document.addEventListener("cut", copy);
  document.addEventListener("paste", paste);
  return () => {
    host.removeEventListener("pointermove", moved);
    host.removeEventListener("pointerleave", left);
    document.removeEventListener("copy", copy);
    document.removeEventListener("cut", copy);
    document.removeEventListener("paste", paste);
  };
}

/** Where what is pasted lands: at the pointer, else in the middle of what one sees. */
export const placeFor = (view: View, pointer?: { readonly px: number; readonly py: number }): Point =>
  pointer ? toPoint(view, pointer) : [view.x, view.y];
