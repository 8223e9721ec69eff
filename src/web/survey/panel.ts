import type { Calculator } from "../calculate/calculator.ts";
import type { OpenJob } from "../contract.ts";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";

/** What a panel of the survey works with. */
export interface SurveyPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly calculator: Calculator;
  readonly onClose: () => void;
}
