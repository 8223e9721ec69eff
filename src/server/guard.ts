import { createHash, timingSafeEqual } from "node:crypto";
import type { Problem } from "#engine";

/** What a request says about where it comes from. */
export interface Asking {
  readonly host: string | undefined;
  readonly origin: string | undefined;
  /** What a browser says on its own, and a page cannot forge. */
  readonly fetchSite: string | undefined;
  readonly cookie: string | undefined;
  readonly authorization: string | undefined;
}

/** One address at which the server is reached: this machine's own, or the one that phones on the local network use. */
export interface Place {
  readonly scheme: "http" | "https";
  /** Names by which a browser may ask for it, without the port; an address of version 6 in brackets. */
  readonly names: readonly string[];
  readonly port: number;
}

/**
 * Decides who is answered. The server hears this machine, and the local network where it was told so; every page that a browser there has
 * open can reach it too:
 *
 * - Host must be our own, or a foreign name that resolves to this machine would make its page ours.
 * - Origin, where the browser tells it, must be our own, or any page could post here, and open a socket.
 * - The token of this start must come along, or any program here could read the jobs. Only who sees the printed address has it.
 */
export interface Guard {
  /** For the files of the web app, which hold no secret. */
  readonly ofPage: (asking: Asking) => Problem | undefined;
  /** For handing over the token in exchange for the cookie. */
  readonly ofSession: (asking: Asking, token: unknown) => Problem | undefined;
  /** For everything that reads or changes jobs. */
  readonly ofJobs: (asking: Asking) => Problem | undefined;
  /** For the socket: a browser always tells the origin there. */
  readonly ofSocket: (asking: Asking) => Problem | undefined;
  readonly cookie: () => string;
}

export function guardOf(options: { readonly place: Place; readonly token: string }): Guard {
  const { scheme, names, port } = options.place;
  // A browser leaves out the port that its scheme has anyway.
  const usual = port === (scheme === "https" ? 443 : 80);
  const hosts = names
    .map((name) => name.toLowerCase())
    .flatMap((name) => [`${name}:${port}`, ...(usual ? [name] : [])]);
  // Browsers share cookies between the ports of a host: the port in the name keeps two servers apart.
  const cookieName = `roomwake-${port}`;
  const otherPlace: Problem = { code: "server-other-place", values: {} };
  const tokenMissing: Problem = { code: "server-token-missing", values: {} };

  const ownHost = ({ host }: Asking): boolean => host !== undefined && hosts.includes(host.toLowerCase());
  const ownOrigin = ({ origin, host }: Asking): boolean => origin === `${scheme}://${host?.toLowerCase()}`;
  const fromElsewhere = (asking: Asking): boolean =>
    !ownHost(asking) ||
    (asking.origin !== undefined && !ownOrigin(asking)) ||
    (asking.fetchSite !== undefined && asking.fetchSite !== "same-origin" && asking.fetchSite !== "none");
  const hasToken = ({ cookie, authorization }: Asking): boolean =>
    (authorization?.startsWith("Bearer ") && equal(authorization.slice(7), options.token)) ||
    (cookie ?? "")
      .split(";")
      .some(
        (part) =>
          part.trim().startsWith(`${cookieName}=`) &&
          equal(part.trim().slice(cookieName.length + 1), options.token),
      );

  return {
    ofPage: (asking) => (ownHost(asking) ? undefined : otherPlace),
    ofSession: (asking, token) =>
      fromElsewhere(asking)
        ? otherPlace
        : typeof token === "string" && equal(token, options.token)
          ? undefined
          : tokenMissing,
    ofJobs: (asking) => (fromElsewhere(asking) ? otherPlace : hasToken(asking) ? undefined : tokenMissing),
    ofSocket: (asking) =>
      fromElsewhere(asking) || !ownOrigin(asking) ? otherPlace : hasToken(asking) ? undefined : tokenMissing,
    cookie: () =>
      `${cookieName}=${options.token}; Path=/; HttpOnly; SameSite=Strict${scheme === "https" ? "; Secure" : ""}`,
  };
}

/** Compares in a time that does not tell how much was right. */
function equal(given: string, wanted: string): boolean {
  const digest = (text: string): Buffer => createHash("sha256").update(text).digest();
  return timingSafeEqual(digest(given), digest(wanted));
}
