/** Reads the codes that a picture shows; none where there is none. */
export type CodeReader = (picture: ImageBitmap | HTMLVideoElement) => Promise<readonly string[]>;

/** What some browsers have of their own; the types of the platform do not know it yet. */
interface OwnDetector {
  readonly detect: (picture: ImageBitmapSource) => Promise<readonly { readonly rawValue: string }[]>;
}
interface OwnDetectorClass {
  readonly getSupportedFormats: () => Promise<readonly string[]>;
  new (options: { readonly formats: readonly string[] }): OwnDetector;
}

/** Longest sides at which a picture is looked at, the first that shows a code wins: fine ones show small codes, coarse ones blurred ones. [pixel] */
const sides = { file: [1600, 1000, 600], video: [720] } as const;

/** The browser's own reader where it has one, else that of a library, which also has a second look at pictures. */
export async function codeReader(): Promise<CodeReader> {
  const own = await ownReader();
  return async (picture) => {
    const found = own ? await own(picture) : [];
    return found.length > 0 || (own && picture instanceof HTMLVideoElement) ? found : byLibrary(picture);
  };
}

async function ownReader(): Promise<CodeReader | undefined> {
  const { BarcodeDetector: Own } = globalThis as { readonly BarcodeDetector?: OwnDetectorClass };
  try {
    // Some browsers have the class, and nothing behind it.
    if (!Own || !(await Own.getSupportedFormats()).includes("qr_code")) return undefined;
    const detector = new Own({ formats: ["qr_code"] });
    return async (picture) => (await detector.detect(picture)).map(({ rawValue }) => rawValue);
  } catch {
    return undefined;
  }
}

const byLibrary: CodeReader = async (picture) => {
  const { default: jsQr } = await import("jsqr");
  const video = picture instanceof HTMLVideoElement;
  const [width, height] = video ? [picture.videoWidth, picture.videoHeight] : [picture.width, picture.height];
  for (const side of sides[video ? "video" : "file"]) {
    const scale = Math.min(1, side / Math.max(width, height));
    const [w, h] = [Math.round(width * scale), Math.round(height * scale)];
    if (w < 21 || h < 21) return [];
    const pen = new OffscreenCanvas(w, h).getContext("2d", { willReadFrequently: true });
    if (!pen) return [];
    pen.drawImage(picture, 0, 0, w, h);
    const found = jsQr(pen.getImageData(0, 0, w, h).data, w, h, {
      inversionAttempts: video ? "dontInvert" : "attemptBoth",
    });
    if (found) return [found.data];
    if (scale === 1 && video) return [];
  }
  return [];
};
