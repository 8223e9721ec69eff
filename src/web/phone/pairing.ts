/** How a phone gets to what this page shows. */
export type Pairing =
  /** The server serves phones: its address with the token, and the job behind it. */
  | { readonly way: "server"; readonly address: string }
  /** The page comes from a host that a phone can open too; jobs are kept on each device. */
  | { readonly way: "host"; readonly address: string }
  /** The server serves this machine alone: how it is started for phones. */
  | { readonly way: "start"; readonly command: string }
  /** A page over plain HTTP from another machine. */
  | { readonly way: "plain" }
  /** The server is away. */
  | { readonly way: "away" };

interface Told {
  readonly entrance: string | null;
  readonly addresses: readonly string[];
}

/** What the page is asked from. */
export interface PairingWorld {
  /** Address of the page. */
  readonly page: string;
  readonly fetch: typeof fetch;
}

const thisMachine = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/;

/**
 * Asks how a phone gets to a job.
 *
 * @param job - Id of the job that the phone is to show.
 */
export async function pairingOf(job: string, { page, fetch: ask }: PairingWorld): Promise<Pairing> {
  const { origin, protocol, hostname, pathname } = new URL(page);
  const told = await toldBy(`${origin}/api/pairing`, ask);
  if (told === "away") return { way: "away" };
  if (told?.entrance) return { way: "server", address: `${told.entrance}#/job/${encodeURIComponent(job)}` };
  if (told)
    return {
      way: "start",
      command: `roomwake start --host ${told.addresses[0] ?? "ADDRESS"} --cert cert.pem --key key.pem`,
    };
  if (protocol === "https:") return { way: "host", address: `${origin}${pathname}` };
  // A static build looked at on this machine alone is as far from a phone as the server is.
  return thisMachine.test(hostname)
    ? { way: "start", command: "roomwake start --host ADDRESS --cert cert.pem --key key.pem" }
    : { way: "plain" };
}

/** Undefined on a static host. */
async function toldBy(address: string, ask: typeof fetch): Promise<Told | "away" | undefined> {
  let answer: Response;
  try {
    answer = await ask(address, { credentials: "same-origin" });
  } catch {
    return "away";
  }
  if (!answer.headers.get("content-type")?.startsWith("application/json")) return undefined;
  return answer.ok ? ((await answer.json()) as Told) : "away";
}
