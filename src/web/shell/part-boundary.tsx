import { Component, type ReactNode } from "react";
import { Button } from "react-aria-components";
import { Say } from "../fields/index.ts";
import { t } from "../texts/index.ts";

interface PartBoundaryProps {
  readonly children: ReactNode;
}

interface PartBoundaryState {
  readonly trouble: string | undefined;
}

/** Around a part of the screen that is loaded when it is first needed: without a connection that fails, and the rest goes on. */
export class PartBoundary extends Component<PartBoundaryProps, PartBoundaryState> {
  override state: PartBoundaryState = { trouble: undefined };

  static getDerivedStateFromError(cause: unknown): PartBoundaryState {
    return { trouble: cause instanceof Error ? cause.message : String(cause) };
  }

  override render(): ReactNode {
    const { trouble } = this.state;
    if (trouble === undefined) return this.props.children;
    return (
      <Say severity="must" live>
        <p>{t("shell.part.missing")}</p>
        <p className="hint">{trouble}</p>
        <div>
          <Button className="button" onPress={() => void loadAgain()}>
            {t("shell.part.again")}
          </Button>
        </div>
      </Say>
    );
  }
}

/** What failed to load stays failed for this page: it begins anew, but only where there is something to load it from. */
async function loadAgain(): Promise<void> {
  try {
    await fetch(location.href, { cache: "no-store" });
    location.reload();
  } catch {
    // Still out of reach: the sentence stands.
  }
}
