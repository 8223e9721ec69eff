import type { KeptJob } from "#job";

/** The server behind this page, if there is one. */
export interface ServerLink {
  /** Its jobs; `none` on a static host, `away` while it cannot be reached or does not let this browser in. */
  readonly jobs: () => Promise<readonly KeptJob[] | "none" | "away">;
  readonly remove: (id: string) => Promise<void>;
  readonly socketUrl: string;
  /** The socket's constructor where it is not the platform's own. */
  readonly socket?: unknown;
}

/**
 * The server at an origin.
 *
 * @param options.known - Remembers between visits that there is a server: without network a static host looks like a server that is away.
 */
export function serverLink(options: {
  readonly origin: string;
  readonly fetch: typeof fetch;
  readonly known: { readonly get: () => boolean; readonly set: () => void };
  readonly socket?: unknown;
}): ServerLink {
  return {
    jobs: async () => {
      let answer: Response;
      try {
        answer = await options.fetch(`${options.origin}/api/jobs`, { credentials: "same-origin" });
      } catch {
        return options.known.get() ? "away" : "none";
      }
      const json = answer.headers.get("content-type")?.startsWith("application/json") ?? false;
      if (!json) return "none";
      options.known.set();
      return answer.ok ? ((await answer.json()) as readonly KeptJob[]) : "away";
    },
    remove: async (id) => {
      await options.fetch(`${options.origin}/api/jobs/${encodeURIComponent(id)}`, {
        method: "DELETE",
        credentials: "same-origin",
      });
    },
    socketUrl: `${options.origin.replace(/^http/, "ws")}/api/sync`,
    ...(options.socket !== undefined && { socket: options.socket }),
  };
}

/**
 * Exchanges the token of a printed address for the cookie, where the page came from the offline store and the server did not see the address.
 *
 * @returns The address without the token, or undefined where there was none.
 */
export async function enterByToken(address: string, ask: typeof fetch): Promise<string | undefined> {
  const url = new URL(address);
  const token = url.searchParams.get("token");
  if (token === null) return undefined;
  await ask(`${url.origin}/api/session`, {
    method: "POST",
    credentials: "same-origin",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ token }),
  }).catch(() => undefined);
  url.searchParams.delete("token");
  return `${url.pathname}${url.search}${url.hash}`;
}
