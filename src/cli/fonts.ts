import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { PdfFonts } from "#output";

/** The lettering that sheets are printed with, out of the installed package. */
export async function readFonts(): Promise<PdfFonts> {
  const { resolve } = createRequire(import.meta.url);
  const [regular, semibold] = await Promise.all(
    ["400Regular/Inter_400Regular.ttf", "600SemiBold/Inter_600SemiBold.ttf"].map((file) =>
      readFile(resolve(`@expo-google-fonts/inter/${file}`)),
    ),
  );
  return { regular: regular!, semibold: semibold! };
}
