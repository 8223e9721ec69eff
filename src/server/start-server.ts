import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import type { IncomingMessage, Server } from "node:http";
import { join, resolve } from "node:path";
import type { Duplex } from "node:stream";
import { serve } from "@hono/node-server";
import { Hono } from "hono";
import { demoJob, initialUpdate } from "#job";
import { apiOf, askingOf } from "./api.ts";
import { type Asking, type Guard, guardOf } from "./guard.ts";
import { sqliteStore } from "./sqlite-store.ts";
import { type Sync, syncOf } from "./sync.ts";
import { webFile } from "./web-files.ts";

/** Id of the demo job: the same everywhere, so that its copies on several devices are one job. */
export const demoId = "saltmarsh";

export interface ServerOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** Only this machine is served: 127.0.0.1 by default. */
  readonly host?: "127.0.0.1";
  /** Folder of the store; made if absent. */
  readonly dataFolder: string;
  /** Folder of the web build. */
  readonly webFolder: string;
}

export interface RunningServer {
  /** Where the page is, as `http://127.0.0.1:4680/`. */
  readonly address: string;
  /** The address with the token of this start: opening it once lets a browser in. */
  readonly entrance: string;
  readonly token: string;
  readonly stop: () => Promise<void>;
}

/** Starts the local server: the web app, the jobs, and their sync, on this machine only. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const file = join(options.dataFolder, "jobs.sqlite");
  const firstRun = !existsSync(file);
  const store = await sqliteStore(file);
  try {
    if (firstRun) {
      await store.append(demoId, { update: initialUpdate(demoJob()), at: Date.now() });
      await store.rename(demoId, demoJob().name);
    }
    const token = randomBytes(24).toString("hex");
    const sync = syncOf({ store, now: Date.now });
    const { server, port, answerWith } = await listening(options);
    const guard = guardOf({ port, token });
    const folder = resolve(options.webFolder);
    const app = new Hono();
    app.route("/api", apiOf({ guard, store, sync, now: Date.now }));
    app.get("*", (context) => page(context.req.raw, { guard, asking: askingOf(context), folder }));
    answerWith((request, environment) => app.fetch(request, environment));
    server.on("upgrade", (request, socket, head) => upgrade(request, socket, { head, guard, sync }));
    const address = `http://127.0.0.1:${port}/`;
    return {
      address,
      entrance: `${address}?token=${token}`,
      token,
      stop: async () => {
        const closed = new Promise<void>((done) => server.close(() => done()));
        await sync.stop();
        server.closeAllConnections();
        await closed;
        await store.close();
      },
    };
  } catch (error) {
    await store.close();
    throw error;
  }
}

type Handler = (request: Request, environment: never) => Response | Promise<Response>;

/** Listens before anything is answered: guard and cookie need the port, which with 0 is known only then. */
function listening(options: ServerOptions): Promise<{
  readonly server: Server;
  readonly port: number;
  readonly answerWith: (handler: Handler) => void;
}> {
  let answer: Handler = () => new Response("Starting …", { status: 503 });
  return new Promise((done, failed) => {
    const server = serve(
      {
        fetch: (request, environment) => answer(request, environment as never),
        port: options.port,
        hostname: options.host ?? "127.0.0.1",
      },
      ({ port }) => {
        server.off("error", failed);
        done({
          server: server as Server,
          port,
          answerWith: (handler) => {
            answer = handler;
          },
        });
      },
    );
    server.once("error", failed);
  });
}

/** A file of the web app; the address with a valid token first leaves the cookie and is then shown without it. */
function page(
  request: Request,
  asked: { readonly guard: Guard; readonly asking: Asking; readonly folder: string },
): Response {
  const { guard, asking } = asked;
  if (guard.ofPage(asking))
    return new Response("Open the address that Roomwake printed when it started.", { status: 403 });
  const url = new URL(request.url);
  const token = url.searchParams.get("token");
  if (token !== null && !guard.ofSession(asking, token)) {
    url.searchParams.delete("token");
    return new Response(null, {
      status: 303,
      headers: {
        Location: `${url.pathname}${url.search}`,
        "Set-Cookie": guard.cookie(),
        "Cache-Control": "no-store",
      },
    });
  }
  return webFile(asked.folder, url.pathname) ?? new Response("There is no such page.", { status: 404 });
}

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
