import { type PlaneMap, picturesOf, product, type UnderlayPicture } from "../jobs/underlay-pictures.ts";
import type { Workbench } from "../shell/workbench.ts";
import type { View } from "./view.ts";

/** Lays the pictures of the storey under the plan; the browser itself bends them to the view, so that panning costs nothing. */
export function picturesIn(host: HTMLElement): (bench: Workbench) => void {
  const shown = new Map<string, { readonly picture: UnderlayPicture; readonly element: HTMLImageElement }>();
  return ({ job, storey, view }) => {
    const pictures = picturesOf(job.kept.underlays, storey);
    for (const [id, { element }] of shown)
      if (!pictures.some((picture) => picture.id === id)) {
        element.remove();
        shown.delete(id);
      }
    for (const picture of pictures) {
      const known = shown.get(picture.id);
      const element = known?.element ?? host.appendChild(document.createElement("img"));
      if (known?.picture !== picture) {
        element.alt = "";
        if (known?.picture.source !== picture.source) element.src = picture.source;
        element.style.width = `${picture.width}px`;
        element.style.height = `${picture.height}px`;
        shown.set(picture.id, { picture, element });
      }
      const bent = bentTo(picture.map, view);
      if (element.style.transform !== bent) element.style.transform = bent;
    }
  };
}

/** The map from a picture's pixels to the screen, as the style sheet writes it: column by column, a depth between. */
export function bentTo(map: PlaneMap, view: View): string {
  const screen = [
    view.scale,
    0,
    view.width / 2 - view.x * view.scale,
    0,
    -view.scale,
    view.height / 2 + view.y * view.scale,
    0,
    0,
    1,
  ];
  const [a, b, c, d, e, f, g, h, i] = product(screen, map) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].map((value) => value / i).join(",")})`;
}
