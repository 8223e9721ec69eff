import type { IncomingMessage, Server } from "node:http";
import { createServer as createSecureServer } from "node:https";
import type { Duplex } from "node:stream";
import { serve } from "@hono/node-server";
import { type Guard, guardOf, type Place } from "./guard.ts";
import type { Sync } from "./sync.ts";

/** Certificate and key of an address on the local network, as PEM. */
export interface Credentials {
  readonly cert: string | Uint8Array;
  readonly key: string | Uint8Array;
}

/** One address at which the server listens. */
export interface Door {
  readonly place: Place;
  /** As `http://127.0.0.1:4680/`. */
  readonly address: string;
  readonly guard: Guard;
  readonly answerWith: (handler: Handler) => void;
  readonly upgradeWith: (sync: Sync) => void;
  readonly close: () => Promise<void>;
}

export type Handler = (request: Request, environment: never) => Response | Promise<Response>;

/** Where to listen. */
export interface Listening {
  /** Name or address, the first by which it is asked for. */
  readonly host: string;
  /** Other names of the same place. */
  readonly alias?: string;
  /** 0 takes any free port. */
  readonly port: number;
  readonly token: string;
  /** Present: HTTPS. */
  readonly credentials?: Credentials;
}

/** Listens before anything is answered: guard and cookie need the port, which with 0 is known only then. */
export function openDoor({ host, alias, port: wanted, token, credentials }: Listening): Promise<Door> {
  let answer: Handler = () => new Response("Starting …", { status: 503 });
  const name = host.includes(":") ? `[${host}]` : host;
  return new Promise((done, failed) => {
    const common = {
      fetch: (request: Request, environment: unknown) => answer(request, environment as never),
      port: wanted,
      hostname: host,
    };
    const listens = ({ port }: { readonly port: number }): void => {
      server.off("error", failed);
      const scheme = credentials ? "https" : "http";
      const place: Place = { scheme, names: [name, ...(alias === undefined ? [] : [alias])], port };
      const guard = guardOf({ place, token });
      done({
        place,
        guard,
        address: `${scheme}://${name}:${port}/`,
        answerWith: (handler) => {
          answer = handler;
        },
        upgradeWith: (sync) =>
          server.on("upgrade", (request, socket, head) => upgrade(request, socket, { head, guard, sync })),
        close: () => {
          const closed = new Promise<void>((end) => server.close(() => end()));
          server.closeAllConnections();
          return closed;
        },
      });
    };
    const server = (
      credentials
        ? serve(
            {
              ...common,
              createServer: createSecureServer,
              serverOptions: { cert: bytesOf(credentials.cert), key: bytesOf(credentials.key) },
            },
            listens,
          )
        : serve(common, listens)
    ) as Server;
    server.once("error", failed);
  });
}

const bytesOf = (pem: string | Uint8Array): string | Buffer =>
  typeof pem === "string" ? pem : Buffer.from(pem);

/** Where a page of this place may open its socket. */
export const socketsOf = ({ scheme, names, port }: Place): readonly string[] =>
  names.map((name) => `${scheme === "https" ? "wss" : "ws"}://${name}:${port}`);

/** Lets a request to the socket pass, or ends it with the reason as its status. */
function upgrade(
  request: IncomingMessage,
  socket: Duplex,
  rest: { readonly head: Buffer; readonly guard: Guard; readonly sync: Sync },
): void {
  const { headers } = request;
  const problem = rest.guard.ofSocket({
    host: headers.host,
    origin: headers.origin,
    fetchSite: headers["sec-fetch-site"] as string | undefined,
    cookie: headers.cookie,
    authorization: headers.authorization,
  });
  const path = (request.url ?? "").split("?", 1)[0];
  if (!problem && path === "/api/sync") {
    rest.sync.upgrade(request, socket, rest.head);
    return;
  }
  const status = !problem
    ? "404 Not Found"
    : problem.code === "server-token-missing"
      ? "401 Unauthorized"
      : "403 Forbidden";
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}
