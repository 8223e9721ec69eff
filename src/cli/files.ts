import { constants, type Stats } from "node:fs";
import { access, lstat, mkdir, open, readFile, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { Problem } from "#engine";

/** A file's bytes, or why they cannot be had. */
export async function readBytes(
  folder: string,
  file: string,
): Promise<{ readonly bytes: Uint8Array } | { readonly problem: Problem }> {
  try {
    return { bytes: await readFile(resolve(folder, file)) };
  } catch (error) {
    return { problem: { code: "file-unreadable", values: { file, reason: reasonOf(error) } } };
  }
}

/** Refuses outputs that are there already, unless they may be replaced, and those that cannot be written: before the work, not after it. */
export async function occupied(
  folder: string,
  files: readonly string[],
  replace: "may-replace" | "keep",
): Promise<readonly Problem[]> {
  const problems: Problem[] = [];
  for (const file of files) {
    const path = resolve(folder, file);
    const there = await statOf(path);
    if (there && replace === "keep") problems.push({ code: "output-exists", values: { file } });
    else {
      const reason = there?.isDirectory() ? "it is a folder" : await unwritable(dirname(path));
      if (reason !== undefined) problems.push({ code: "file-unwritable", values: { file, reason } });
    }
  }
  return problems;
}

/** Why nothing can be put into a folder, or into the nearest one above it that is there. */
async function unwritable(folder: string): Promise<string | undefined> {
  const there = await statOf(folder);
  if (!there) return dirname(folder) === folder ? undefined : unwritable(dirname(folder));
  if (!there.isDirectory()) return "a part of its path is not a folder";
  return access(folder, constants.W_OK).then(() => undefined, reasonOf);
}

/**
 * Writes a file whole or not at all: into a new file beside it, flushed to the disk, then renamed over the name.
 * A reader sees the old content or the new, and so does the next start after a power cut.
 */
export async function writeWhole(
  folder: string,
  file: string,
  content: string | Uint8Array,
): Promise<Problem | undefined> {
  const path = resolve(folder, file);
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    await makeFolder(dirname(path));
    const handle = await open(beside, "w");
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, path);
    await syncFolder(dirname(path));
    return undefined;
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    return { code: "file-unwritable", values: { file, reason: reasonOf(error) } };
  }
}

/** Makes a folder and those above it. (Node's own way of doing so never ends where the system refuses a folder as missing.) */
async function makeFolder(path: string): Promise<void> {
  const made = await mkdir(path).catch((error: NodeJS.ErrnoException) => error);
  if (made?.code === "ENOENT" && dirname(path) !== path) {
    await makeFolder(dirname(path));
    await mkdir(path);
  } else if (made && !(await statOf(path))?.isDirectory()) throw made;
}

/** A rename is on the disk once its folder is; not every system lets a folder be opened, and then there is no more to be done. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r").catch(() => undefined);
  if (!handle) return;
  await handle.sync().catch(() => undefined);
  await handle.close();
}

/** What is at a path; a link counts as what it leads to, and as itself where that is missing. */
async function statOf(path: string): Promise<Stats | undefined> {
  return stat(path).catch(() => lstat(path).catch(() => undefined));
}

/** The system's reason in words; its codes are for programmers. */
export function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  switch (code) {
    case "ENOENT":
      return "there is no such file or folder";
    case "EACCES":
    case "EPERM":
      return "permission is denied";
    case "EISDIR":
      return "it is a folder";
    case "ENOTDIR":
      return "a part of its path is not a folder";
    case "EEXIST":
      return "a file has that name";
    case "EROFS":
      return "its disk may only be read";
    case "ENOSPC":
      return "the disk is full";
    default:
      return error instanceof Error ? error.message : String(error);
  }
}
