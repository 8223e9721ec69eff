import type { HomeShelf } from "../contract.ts";
import type { SmallPicture } from "../survey/drawings/picture-file.ts";
import { PictureScale } from "../survey/drawings/picture-scale.tsx";
import { pictureUnderlay } from "../survey/drawings/picture-underlay.ts";
import { t } from "../texts/scan.ts";
import { emptySite } from "./empty-site.ts";

interface PictureStartProps {
  readonly picture: SmallPicture;
  readonly shelf: HomeShelf;
  readonly onOpen: (jobId: string) => void;
  readonly onTrouble: (cause: unknown) => void;
  readonly onDrop: () => void;
}

/** A picture of a plan gets its scale, and becomes a job with nothing in it but this to draw over. */
export function PictureStart({ picture, shelf, onOpen, onTrouble, onDrop }: PictureStartProps) {
  const begin = (map: readonly number[]): void => {
    const site = { ...emptySite(shelf.startModels()), name: picture.name.replace(/\.[^.]+$/, "") };
    const storey = site.storeys[0]?.id ?? "";
    shelf
      .create(site, undefined, [pictureUnderlay(picture, { map, id: "picture-1", storey })])
      .then(onOpen, onTrouble);
  };
  return <PictureScale picture={picture} word={t("scan.draw-over")} onTake={begin} onDrop={onDrop} />;
}
