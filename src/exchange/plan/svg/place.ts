import type { Clip } from "../page/clip.ts";
import type { Matrix } from "../page/matrix.ts";
import type { Viewport } from "./shapes.ts";
import type { SvgStyle } from "./style.ts";

/** Where an element stands: what its parents have set. */
export interface SvgPlace {
  readonly matrix: Matrix;
  readonly clip: Clip;
  readonly style: SvgStyle;
  /** Layer by name, where a group around is one. */
  readonly group: string | undefined;
  readonly viewport: Viewport;
  readonly depth: number;
  /** Parts that are being put in, outermost first. */
  readonly uses: readonly string[];
}
