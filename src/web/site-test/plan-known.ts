import { useEffect, useState } from "react";
import type { SettingValues } from "#engine";
import { installationOf } from "#job";
import { faultLine } from "../calculate/fault-line.ts";
import type { FaultAnswer } from "../calculate/fault-protocol.ts";
import { isTrouble } from "../calculate/line.ts";
import type { OpenJob } from "../contract.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";

/** What the plan says of a room, found out beside the screen. */
export function usePlanKnown(
  job: OpenJob,
  store: Store<Workbench>,
  room: string,
): { readonly known: FaultAnswer | undefined; readonly trouble: string | undefined } {
  const settings = usePart(store, (bench) => ({ settings: bench.settings })).settings;
  const [answer, setAnswer] = useState<{ known?: FaultAnswer; trouble?: string }>({});
  const { site, kept } = job;
  const { boards, circuits } = kept;
  useEffect(() => {
    const line = faultLine();
    const planned = Object.fromEntries(
      (settings?.devices ?? []).map(({ context, settings: own }) => [
        context.device,
        Object.fromEntries(
          Object.entries(own).map(([name, { value }]) => [name, value]),
        ) as unknown as SettingValues,
      ]),
    );
    void line
      .ask({ site, room, found: installationOf({ boards, circuits }), settings: planned })
      .then((told) => {
        if (told) setAnswer(isTrouble(told) ? { trouble: told.sentence } : { known: told });
      });
    return line.stop;
  }, [site, boards, circuits, settings, room]);
  return { known: answer.known, trouble: answer.trouble };
}
