/** Longest name before the ending: some systems stop at 255 bytes, and a letter may take four. */
const longest = 50;

/** The name of a job's file that every file system takes. @example jobFileName("Hall 3/4", "zip") is Hall 3 4.job.zip */
export function jobFileName(name: string, ending: "json" | "zip"): string {
  const plain = [...name.replace(/[\s\\/:*?"<>|\p{Cc}\p{Cs}]+/gu, " ")].slice(0, longest).join("");
  return `${plain.replace(/^[\s.]+|[\s.]+$/g, "") || "job"}.job.${ending}`;
}
