import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { Hono } from "hono";
import { demoJob, initialUpdate } from "#job";
import { apiOf, askingOf } from "./api.ts";
import { type Credentials, type Door, openDoor, socketsOf } from "./door.ts";
import type { Asking } from "./guard.ts";
import { ownAddresses } from "./own-addresses.ts";
import { sqliteStore } from "./sqlite-store.ts";
import { syncOf } from "./sync.ts";
import { webFile } from "./web-files.ts";

/** Id of the demo job: the same everywhere, so that its copies on several devices are one job. */
export const demoId = "saltmarsh";

export interface ServerOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** Folder of the store; made if absent. */
  readonly dataFolder: string;
  /** Folder of the web build. */
  readonly webFolder: string;
  /** Where phones on the local network reach it, over HTTPS alone: without it only this machine is served. */
  readonly phones?: Credentials & { readonly host: string };
}

export interface RunningServer {
  /** Where the page is, as `http://127.0.0.1:4680/`. */
  readonly address: string;
  /** The address with the token of this start: opening it once lets a browser in. */
  readonly entrance: string;
  /** The same for phones, where they are served. */
  readonly phones: { readonly address: string; readonly entrance: string } | undefined;
  readonly token: string;
  readonly stop: () => Promise<void>;
}

/** Starts the local server: the web app, the jobs, and their sync; on this machine, and for phones where the options say how. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const file = join(options.dataFolder, "jobs.sqlite");
  const firstRun = !existsSync(file);
  const store = await sqliteStore(file);
  const doors: Door[] = [];
  try {
    if (firstRun) {
      await store.append(demoId, { update: initialUpdate(demoJob()), at: Date.now() });
      await store.rename(demoId, demoJob().name);
    }
    const token = randomBytes(24).toString("hex");
    const sync = syncOf({ store, now: Date.now });
    const { port, phones } = options;
    const own = await openDoor({ host: "127.0.0.1", alias: "localhost", port, token });
    doors.push(own);
    if (phones) {
      const { host, ...credentials } = phones;
      doors.push(await openDoor({ host, port: own.place.port, token, credentials }));
    }
    const entranceOf = ({ address }: Door): string => `${address}?token=${token}`;
    const forPhones = doors[1] && { address: doors[1].address, entrance: entranceOf(doors[1]) };
    const pairing = {
      entrance: forPhones?.entrance ?? null,
      port: own.place.port,
      addresses: ownAddresses(),
    };
    const folder = resolve(options.webFolder);
    for (const door of doors) {
      const app = new Hono();
      app.route("/api", apiOf({ guard: door.guard, store, sync, now: Date.now, pairing }));
      app.get("*", (context) => page(context.req.raw, { door, asking: askingOf(context), folder }));
      door.answerWith((request, environment) => app.fetch(request, environment));
      door.upgradeWith(sync);
    }
    return {
      address: own.address,
      entrance: entranceOf(own),
      phones: forPhones,
      token,
      stop: async () => {
        await sync.stop();
        await Promise.all(doors.map((door) => door.close()));
        await store.close();
      },
    };
  } catch (error) {
    await Promise.all(doors.map((door) => door.close()));
    await store.close();
    throw error;
  }
}

/** A file of the web app; the address with a valid token first leaves the cookie and is then shown without it. */
function page(
  request: Request,
  asked: { readonly door: Door; readonly asking: Asking; readonly folder: string },
): Response {
  const { door, asking } = asked;
  const { guard } = door;
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
  return (
    webFile(asked.folder, { path: url.pathname, sockets: socketsOf(door.place) }) ??
    new Response("There is no such page.", { status: 404 })
  );
}
