import { placeFor } from "../plan/edit/clipboard.ts";
import { t } from "../texts/index.ts";
import type { EditActions } from "./edit-actions.ts";
import type { Store, Workbench } from "./workbench.ts";

/** Pastes in the middle of what one sees, for hands without a keyboard; the browser may ask, and may refuse. */
export async function pasteInView(
  store: Store<Workbench>,
  actions: Pick<EditActions, "paste" | "say">,
): Promise<void> {
  let text: string;
  try {
    text = await navigator.clipboard.readText();
  } catch {
    actions.say(t("edit.paste.refused"));
    return;
  }
  actions.paste(text, placeFor(store.get().view));
}
