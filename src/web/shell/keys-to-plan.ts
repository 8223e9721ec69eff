import { useEffect } from "react";
import type { Tool } from "../plan/tools/state.ts";

/** The menu that a tool was chosen from has closed by then, and has given up its keyboard. [ms] */
const afterMenu = 200;

/** A tool was taken from a menu whose button gave way to it: the keyboard would be nowhere, and goes to the plan. */
export function useKeysToPlan({ kind }: Tool, onPlan: () => void): void {
  useEffect(() => {
    if (kind === "select") return;
    const look = setTimeout(() => {
      if (document.activeElement === null || document.activeElement === document.body) onPlan();
    }, afterMenu);
    return () => clearTimeout(look);
  }, [kind, onPlan]);
}
