import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { HocuspocusProvider, HocuspocusProviderWebsocket } from "@hocuspocus/provider";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WebSocket } from "ws";
import * as Y from "yjs";

/** Often enough that a window of a few per cent between acknowledging and writing would be hit. */
const kills = 50;

const root = fileURLToPath(new URL("../..", import.meta.url));
// Inside node_modules, so that the bundle finds the installed packages.
const bundle = join(root, "node_modules", ".cache", "roomwake-kill-test", "server", "main.mjs");
const folder = mkdtempSync(join(tmpdir(), "roomwake-kill-"));
let server: ChildProcess | undefined;

beforeAll(async () => {
  await build({
    stdin: {
      contents: `
        import { startServer } from "./src/server/index.ts";
        const [dataFolder] = process.argv.slice(2);
        const running = await startServer({ port: 0, dataFolder, webFolder: dataFolder });
        console.log(running.entrance);`,
      resolveDir: root,
      loader: "ts",
    },
    outfile: bundle,
    bundle: true,
    format: "esm",
    platform: "node",
    minify: true,
    // One file starts in half the time of a thousand; the database's driver is a binary and stays outside.
    external: ["libsql"],
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    logLevel: "error",
  });
});
afterAll(() => {
  server?.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
  rmSync(join(bundle, "..", ".."), { recursive: true, force: true });
});

/** Numbers that look random and are the same in every run. */
function diceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
}

async function started(): Promise<{
  readonly process: ChildProcess;
  readonly host: string;
  readonly token: string;
}> {
  const process = spawn(globalThis.process.execPath, [bundle, folder], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  server = process;
  const address = await new Promise<URL>((done, failed) => {
    let text = "";
    process.stdout!.on("data", (part: Buffer) => {
      text += part.toString();
      const found = /http:\S+/.exec(text);
      if (found && text.includes("\n")) done(new URL(found[0]));
    });
    process.once("exit", (code) =>
      failed(new Error(`The server ended with ${code} before it said where it is`)),
    );
  });
  return { process, host: address.host, token: address.searchParams.get("token")! };
}

/** A page that knows nothing of the job but what the server sends. */
async function connected(at: { readonly host: string; readonly token: string }) {
  const port = at.host.split(":")[1];
  class PageSocket extends WebSocket {
    constructor(url: string) {
      super(url, { headers: { origin: `http://${at.host}`, cookie: `roomwake-${port}=${at.token}` } });
      // A socket that is killed reports an error; the provider hears of it by its close.
      this.on("error", () => {});
    }
  }
  const socket = new HocuspocusProviderWebsocket({
    url: `ws://${at.host}/api/sync`,
    WebSocketPolyfill: PageSocket,
    maxAttempts: 1,
  });
  const ydoc = new Y.Doc();
  const provider = new HocuspocusProvider({ name: "kill", document: ydoc, websocketProvider: socket });
  provider.attach();
  await until(() => provider.isSynced && provider.unsyncedChanges === 0);
  return {
    ydoc,
    waiting: () => provider.unsyncedChanges,
    close: () => {
      provider.destroy();
      socket.destroy();
    },
  };
}

const pause = (): Promise<void> => new Promise((done) => setTimeout(done, 1));

async function until(condition: () => boolean): Promise<void> {
  const end = Date.now() + 20_000;
  while (!condition()) {
    if (Date.now() > end) throw new Error("Waited in vain");
    await pause();
  }
}

test(`a server that is killed ${kills} times amid edits loses nothing that it acknowledged`, {
  timeout: 600_000,
}, async () => {
  const dice = diceFrom(20260302);
  const acknowledged = new Set<string>();
  let inFlight = 0;
  let lost: string[] = [];
  for (let round = 0; round <= kills; round++) {
    const at = await started();
    const page = await connected(at);
    const edits = page.ydoc.getMap<string>("details");
    lost = [...acknowledged].filter((key) => !edits.has(key));
    expect(lost).toEqual([]);
    if (round === kills) {
      page.close();
      break;
    }
    // Edits go on without waiting for answers; the kill comes at some moment after some of them were acknowledged.
    const wanted = 1 + Math.floor(dice() * 25);
    const burst = 1 + Math.floor(dice() * 6);
    const sent: string[] = [];
    while (sent.length - page.waiting() < wanted) {
      for (let i = 0; i < burst; i++) {
        const key = `r${round}-${sent.length}`;
        edits.set(key, "x".repeat(1 + Math.floor(dice() * 400)));
        sent.push(key);
      }
      await pause();
    }
    at.process.kill("SIGKILL");
    // Answers come in the order of the edits, and only those that have arrived by now count.
    const answered = sent.length - page.waiting();
    for (const key of sent.slice(0, answered)) acknowledged.add(key);
    inFlight += sent.length - answered;
    await new Promise((done) => at.process.once("exit", done));
    page.close();
  }
  expect(acknowledged.size).toBeGreaterThan(kills);
  // Otherwise the kills would all have come in moments of rest.
  expect(inFlight).toBeGreaterThan(kills);
});
