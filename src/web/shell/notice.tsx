import { Button } from "react-aria-components";
import { Say } from "../fields/index.ts";
import { t } from "../texts/index.ts";
import { Sign } from "./signs.tsx";
import { type Store, usePart, type Workbench } from "./workbench.ts";

/** The sentence that answers the last deed, with its way out. */
export function Notice({ store }: { readonly store: Store<Workbench> }) {
  const sentence = usePart(store, ({ notice }) => notice);
  if (sentence === undefined) return null;
  return (
    <div className="trouble notice no-print">
      <Say severity="note" live>
        {sentence}
      </Say>
      <Button
        className="bar-word bar-sign"
        aria-label={t("shell.close")}
        onPress={() => store.set({ notice: undefined })}
      >
        <Sign name="close" />
      </Button>
    </div>
  );
}
