import { createReadStream, existsSync, statSync } from "node:fs";
import { extname, join, normalize, sep } from "node:path";
import { Readable } from "node:stream";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".wasm": "application/wasm",
  ".ttf": "font/ttf",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
};

/** Everything comes from this server itself; scripts may compile the solver's WebAssembly; no page may frame it. */
const contentPolicy = (sockets: readonly string[]): string =>
  [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    `connect-src 'self' ${sockets.join(" ")} data: blob:`,
    "worker-src 'self' blob:",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'self'",
  ].join("; ");

/**
 * Answers with a file of the web build; a path without an ending is a place inside the app and gets its first page.
 *
 * @param folder - Folder of the build.
 * @param path - Path of the request, still encoded.
 * @param sockets - Where the page may open a socket: not every browser counts one of its own origin as such.
 * @returns Undefined where there is no such file.
 */
export function webFile(
  folder: string,
  { path, sockets }: { readonly path: string; readonly sockets: readonly string[] },
): Response | undefined {
  const name = decoded(path);
  if (name === undefined) return undefined;
  const wanted = normalize(join(folder, name));
  if (wanted !== folder && !wanted.startsWith(folder + sep)) return undefined;
  const file =
    existsSync(wanted) && statSync(wanted).isFile()
      ? wanted
      : extname(name) === ""
        ? join(folder, "index.html")
        : "";
  if (!existsSync(file)) return undefined;
  const hashed = file.includes(`${sep}assets${sep}`);
  return new Response(Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array<ArrayBuffer>>, {
    headers: {
      "Content-Type": types[extname(file)] ?? "application/octet-stream",
      "Content-Length": String(statSync(file).size),
      // Names in assets/ carry a hash of their content; everything else is asked for anew.
      "Cache-Control": hashed ? "public, max-age=31536000, immutable" : "no-cache",
      "Content-Security-Policy": contentPolicy(sockets),
      "X-Content-Type-Options": "nosniff",
      "Referrer-Policy": "no-referrer",
      // Both together let the page share memory with its workers.
      "Cross-Origin-Opener-Policy": "same-origin",
      "Cross-Origin-Embedder-Policy": "require-corp",
      "Cross-Origin-Resource-Policy": "same-origin",
    },
  });
}

function decoded(path: string): string | undefined {
  try {
    const name = decodeURIComponent(path);
    return name.includes("\0") ? undefined : name;
  } catch {
    return undefined;
  }
}
