import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request as httpRequest } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { WebSocket } from "ws";
import { demoJob, emptyJob, identityOf, jobText, parseJob } from "#job";
import { type RunningServer, startServer } from "./index.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-server-"));
let running: RunningServer;
let host: string;

beforeAll(async () => {
  mkdirSync(join(folder, "web", "assets"), { recursive: true });
  writeFileSync(join(folder, "web", "index.html"), "<!doctype html><title>Roomwake</title>");
  writeFileSync(join(folder, "web", "assets", "a-1234.js"), "1");
  writeFileSync(join(folder, "secret.txt"), "secret");
  running = await startServer({ port: 0, dataFolder: join(folder, "store"), webFolder: join(folder, "web") });
  host = new URL(running.address).host;
});
afterAll(async () => {
  await running.stop();
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A request with exactly these headers: fetch would not let Host and Origin be chosen. */
const ask = (
  path: string,
  options: {
    readonly method?: string;
    readonly headers?: Record<string, string>;
    readonly body?: string;
  } = {},
): Promise<Answer> =>
  new Promise((done, failed) => {
    const { port } = new URL(running.address);
    const sent = httpRequest(
      {
        host: "127.0.0.1",
        port,
        path,
        method: options.method ?? "GET",
        headers: { host, ...options.headers },
      },
      (answer) => {
        let text = "";
        answer.setEncoding("utf8");
        answer.on("data", (part: string) => {
          text += part;
        });
        answer.on("end", () => done({ status: answer.statusCode!, headers: answer.headers, text }));
      },
    );
    sent.on("error", failed);
    sent.end(options.body);
  });

const bearer = (): Record<string, string> => ({ authorization: `Bearer ${running.token}` });
const cookie = (): string => `roomwake-${new URL(running.address).port}=${running.token}`;

describe("the web app", () => {
  test("is served to our own host, with its first page for every place inside the app", async () => {
    for (const path of ["/", "/job/saltmarsh"]) {
      const answer = await ask(path);
      expect([answer.status, answer.headers["content-type"], answer.text]).toEqual([
        200,
        "text/html; charset=utf-8",
        "<!doctype html><title>Roomwake</title>",
      ]);
      expect(answer.headers["content-security-policy"]).toContain("frame-ancestors 'none'");
    }
    expect((await ask("/assets/a-1234.js")).headers["cache-control"]).toContain("immutable");
    expect((await ask("/assets/gone.js")).status).toBe(404);
  });

  test("never gives a file from outside its folder", async () => {
    for (const path of [
      "/../secret.txt",
      "/%2e%2e/secret.txt",
      "/..%2fsecret.txt",
      "/assets/..%2f..%2fsecret.txt",
      "/%00",
      "/%zz",
    ]) {
      const answer = await ask(path);
      expect([path, answer.text.includes("secret")]).toEqual([path, false]);
      expect([400, 404]).toContain(answer.status);
    }
  });

  test("leaves the cookie when it is opened by the printed address, and takes the token out of it", async () => {
    const answer = await ask(`/?token=${running.token}`);
    expect([answer.status, answer.headers.location]).toEqual([303, "/"]);
    expect(answer.headers["set-cookie"]).toEqual([`${cookie()}; Path=/; HttpOnly; SameSite=Strict`]);
    const wrong = await ask("/?token=wrong");
    expect([wrong.status, wrong.headers["set-cookie"]]).toEqual([200, undefined]);
  });
});

describe("a page from elsewhere", () => {
  const elsewhere: readonly (readonly [string, Record<string, string>])[] = [
    ["under a foreign name for this machine", { host: "evil.example:80" }],
    ["by another origin", { origin: "http://evil.example" }],
    ["by another port of this machine", { origin: "http://127.0.0.1:1" }],
    ["by an opaque origin", { origin: "null" }],
    ["by the browser's word on a request across sites", { "sec-fetch-site": "cross-site" }],
    ["by the browser's word on a request from another port", { "sec-fetch-site": "same-site" }],
  ];

  test.each(elsewhere)("reads and changes no job, even with the cookie: %s", async (_, headers) => {
    for (const method of ["GET", "POST", "DELETE"]) {
      const answer = await ask(method === "POST" ? "/api/jobs" : "/api/jobs/saltmarsh", {
        method,
        headers: { cookie: cookie(), ...headers },
      });
      expect(answer.status).toBe(403);
      expect(JSON.parse(answer.text).problems[0].code).toBe("server-other-place");
    }
  });

  test.each(elsewhere)("does not get the cookie, even with the token: %s", async (_, headers) => {
    const answer = await ask("/api/session", {
      method: "POST",
      headers: { "content-type": "application/json", ...headers },
      body: JSON.stringify({ token: running.token }),
    });
    expect([answer.status, answer.headers["set-cookie"]]).toEqual([403, undefined]);
  });

  const socketStatus = (headers: Record<string, string>, path = "/api/sync"): Promise<number | "open"> =>
    new Promise((done) => {
      const socket = new WebSocket(`ws://${host}${path}`, { headers });
      socket.on("open", () => {
        socket.close();
        done("open");
      });
      socket.on("unexpected-response", (request, answer) => {
        request.destroy();
        done(answer.statusCode!);
      });
      socket.on("error", () => {});
    });

  test.each(elsewhere)("cannot open the socket, even with the cookie: %s", async (_, headers) => {
    const own = { origin: `http://${host}`, cookie: cookie() };
    expect(await socketStatus({ ...own, ...headers })).toBe(403);
  });

  test("and our own page can, with the token of this start only", async () => {
    const origin = `http://${host}`;
    expect(await socketStatus({ origin, cookie: cookie() })).toBe("open");
    expect(await socketStatus({ origin })).toBe(401);
    expect(await socketStatus({ origin, cookie: cookie().replace(/.$/, "x") })).toBe(401);
    expect(await socketStatus({ cookie: cookie() })).toBe(403);
    expect(await socketStatus({ origin, cookie: cookie() }, "/api/other")).toBe(404);
  });
});

describe("jobs over HTTP", () => {
  test("need the token", async () => {
    const answer = await ask("/api/jobs");
    expect(answer.status).toBe(401);
    expect(JSON.parse(answer.text).problems[0]).toEqual({
      code: "server-token-missing",
      message: "The request does not carry the token of this start.",
      remedy: "Open the address that Roomwake printed when it started.",
    });
    expect((await ask("/api/jobs", { headers: { cookie: cookie() } })).status).toBe(200);
  });

  test("the first run has the demo job, and gives it back as its file", async () => {
    const list = JSON.parse((await ask("/api/jobs", { headers: bearer() })).text);
    expect(list.map((job: { id: string; name: string }) => [job.id, job.name])).toEqual([
      ["saltmarsh", "Saltmarsh Ferry Terminal, Staff Wing"],
    ]);
    expect((await ask("/api/jobs/saltmarsh", { headers: bearer() })).text).toBe(jobText(demoJob()));
  });

  test("can be made from a file, fetched and deleted", async () => {
    const { job } = parseJob(emptyJob("Annex"));
    const file = jobText(job!);
    const made = await ask("/api/jobs", { method: "POST", headers: bearer(), body: file });
    expect(made.status).toBe(201);
    const { id } = JSON.parse(made.text);
    const kept = jobText({ ...job!, id });
    expect((await ask(`/api/jobs/${id}`, { headers: bearer() })).text).toBe(kept);
    // A copy of it is kept apart, once, and says whose copy it is.
    const copies = await Promise.all(
      [1, 2].map(() => ask("/api/jobs", { method: "POST", headers: bearer(), body: kept })),
    );
    const [copy, again] = copies.map(({ text }) => JSON.parse(text).id as string);
    expect([again, copy === id, identityOf(copy!)]).toEqual([copy, false, id]);
    expect((await ask(`/api/jobs/${copy}`, { headers: bearer() })).text).toBe(kept);
    expect((await ask(`/api/jobs/${id}`, { method: "DELETE", headers: bearer() })).status).toBe(204);
    const gone = await ask(`/api/jobs/${id}`, { headers: bearer() });
    expect([gone.status, JSON.parse(gone.text).problems[0].code]).toEqual([404, "server-job-unknown"]);
  });

  test("a file that cannot be read is refused with the place in it", async () => {
    const bad = JSON.stringify({ format: "roomwake-job", rooms: [{ name: "A", outline: [[0, 0]] }] });
    const answer = await ask("/api/jobs", { method: "POST", headers: bearer(), body: bad });
    expect([answer.status, JSON.parse(answer.text).problems[0].message]).toEqual([
      422,
      "rooms[0] “A”: outline has 1 corners; a room needs at least 3.",
    ]);
  });

  test("a request beyond all measure is refused by what it announces", async () => {
    const answer = await new Promise<Answer>((done, failed) => {
      const { port } = new URL(running.address);
      const headers = { host, ...bearer(), "content-length": String(65 * 1024 * 1024) };
      const sent = httpRequest(
        { host: "127.0.0.1", port, path: "/api/jobs", method: "POST", headers },
        (reply) => {
          let text = "";
          reply.on("data", (part: Buffer) => {
            text += part.toString();
          });
          reply.on("end", () => {
            done({ status: reply.statusCode!, headers: reply.headers, text });
            sent.destroy();
          });
        },
      );
      sent.on("error", failed);
      sent.flushHeaders();
    });
    expect([answer.status, JSON.parse(answer.text).problems[0].message]).toEqual([
      413,
      "The request is larger than 64 MB.",
    ]);
  });
});

test("the server hears this machine only", async () => {
  expect(new URL(running.address).hostname).toBe("127.0.0.1");
});

test("a taken port is a clear error", async () => {
  const port = Number(new URL(running.address).port);
  await expect(
    startServer({ port, dataFolder: join(folder, "other"), webFolder: join(folder, "web") }),
  ).rejects.toMatchObject({
    code: "EADDRINUSE",
  });
});
