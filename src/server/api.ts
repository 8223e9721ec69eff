import { randomUUID } from "node:crypto";
import type { Context, MiddlewareHandler } from "hono";
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { type Problem, remedyOf, sentenceOf } from "#engine";
import { beginJob, createJobDocument, type JobStore, jobText, readJobFile } from "#job";
import type { Asking, Guard } from "./guard.ts";
import { jobIdPattern, type Sync } from "./sync.ts";

/** How a phone gets to this server. */
export interface Pairing {
  /** Its address with the token of this start; null where phones are not served. */
  readonly entrance: string | null;
  readonly port: number;
  /** Addresses of this machine, to serve phones at. */
  readonly addresses: readonly string[];
}

/** The largest job file that is taken. [MB] */
const largestFile = 64;

/**
 * The HTTP side of the server, all of it under /api:
 *
 *   POST   /api/session    { token }   the printed token for a cookie
 *   GET    /api/jobs                   [{ id, name, changed }]
 *   POST   /api/jobs       job file    plain or packed; { id } of the job; 422 with problems if it cannot be read
 *   GET    /api/jobs/:id               the job as a file
 *   DELETE /api/jobs/:id
 *   GET    /api/pairing                how a phone gets here: { entrance, port, addresses }
 */
export function apiOf(options: {
  readonly guard: Guard;
  readonly store: JobStore;
  readonly sync: Sync;
  readonly now: () => number;
  readonly pairing: Pairing;
}): Hono {
  const { guard, store, sync, pairing } = options;
  const api = new Hono();
  api.use(async (context, next) => {
    await next();
    context.header("Cache-Control", "no-store");
    context.header("X-Content-Type-Options", "nosniff");
  });
  api.use(
    bodyLimit({
      maxSize: largestFile * 1024 * 1024,
      onError: (context) =>
        refused(context, 413, [{ code: "server-request-too-large", values: { most: largestFile } }]),
    }),
  );

  api.post("/session", async (context) => {
    const body: unknown = await context.req.json().catch(() => undefined);
    const token =
      typeof body === "object" && body !== null ? (body as Record<string, unknown>).token : undefined;
    const problem = guard.ofSession(askingOf(context), token);
    if (problem) return refused(context, 403, [problem]);
    context.header("Set-Cookie", guard.cookie());
    return context.body(null, 204);
  });

  const letIn: MiddlewareHandler = async (context, next) => {
    const problem = guard.ofJobs(askingOf(context));
    return problem
      ? refused(context, problem.code === "server-token-missing" ? 401 : 403, [problem])
      : next();
  };
  api.use("/jobs/*", letIn);
  api.use("/pairing", letIn);

  api.get("/pairing", (context) => context.json(pairing));

  api.get("/jobs", async (context) => context.json(await store.list()));

  api.post("/jobs", async (context) => {
    const read = readJobFile(new Uint8Array(await context.req.arrayBuffer()));
    if (!read.job) return refused(context, 422, read.problems);
    const { id, update } = beginJob(read, randomUUID);
    await store.append(id, { update, at: options.now() });
    await store.rename(id, read.job.name);
    return context.json({ id }, 201);
  });

  api.get("/jobs/:id", async (context) => {
    const id = context.req.param("id");
    const ydoc = jobIdPattern.test(id) ? await sync.read(id) : undefined;
    if (!ydoc) return refused(context, 404, [{ code: "server-job-unknown", values: { id } }]);
    const document = createJobDocument(ydoc);
    const text = jobText(document.job());
    document.close();
    return context.body(text, 200, { "Content-Type": "application/json; charset=utf-8" });
  });

  api.delete("/jobs/:id", async (context) => {
    const id = context.req.param("id");
    sync.dismiss(id);
    await store.remove(id);
    return context.body(null, 204);
  });

  api.all("*", (context) => context.json({ problems: [] }, 404));
  return api;
}

/** What a request says about where it comes from. */
export const askingOf = (context: Context): Asking => ({
  host: context.req.header("host"),
  origin: context.req.header("origin"),
  fetchSite: context.req.header("sec-fetch-site"),
  cookie: context.req.header("cookie"),
  authorization: context.req.header("authorization"),
});

const refused = (
  context: Context,
  status: 401 | 403 | 404 | 413 | 422,
  problems: readonly Problem[],
): Response =>
  context.json(
    {
      problems: problems.map((problem) => ({
        code: problem.code,
        message: sentenceOf(problem),
        remedy: remedyOf(problem),
      })),
    },
    status,
  );
