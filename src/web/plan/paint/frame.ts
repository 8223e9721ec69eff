/** A part of the screen. [px] */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export const sameFrame = (a: Frame | undefined, b: Frame | undefined): boolean =>
  a === b || (a?.left === b?.left && a?.top === b?.top && a?.width === b?.width && a?.height === b?.height);
