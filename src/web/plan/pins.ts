import type { Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";
import { toPixel } from "./view.ts";

/** Pins of the notes of a storey: numbered as in the list, each a button that leads to its note. */
export function pinsIn(host: HTMLElement, onPin: (note: string) => void): (bench: Workbench) => void {
  const shown = new Map<string, HTMLButtonElement>();
  return ({ job, storey, view }) => {
    const notes = job.kept.notes.filter((note) => note.storey === storey);
    for (const [id, pin] of shown)
      if (!notes.some((note) => note.id === id)) {
        pin.remove();
        shown.delete(id);
      }
    notes.forEach((note, index) => {
      const known = shown.get(note.id);
      const pin = known ?? host.appendChild(document.createElement("button"));
      if (!known) {
        pin.type = "button";
        pin.className = "note-pin";
        pin.addEventListener("click", () => onPin(note.id));
        // A press on the pin is none on the plan.
        pin.addEventListener("pointerdown", (event) => event.stopPropagation());
        shown.set(note.id, pin);
      }
      const number = String(index + 1);
      if (pin.textContent !== number) {
        pin.textContent = number;
        pin.setAttribute("aria-label", t("notes.pin", { number }));
      }
      const { px, py } = toPixel(view, note.at);
      pin.style.transform = `translate(${px}px, ${py}px)`;
    });
  };
}
