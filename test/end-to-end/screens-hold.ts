import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** Findings of the accessibility checker that keep somebody out. */
async function barriers(page: Page, rules: "all" | "colours" = "all"): Promise<readonly string[]> {
  // The list of things repeats one option some hundred times: the first ones speak for all.
  const checker = new AxeBuilder({ page }).exclude(".things-item:nth-child(n+12)");
  const { violations } = await (rules === "all" ? checker : checker.withRules(["color-contrast"])).analyze();
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`);
}

/** Colours that fade from one theme to the other are looked at when they have arrived. */
const settled = (page: Page): Promise<unknown> =>
  page.evaluate(() =>
    Promise.all(
      document
        .getAnimations()
        .filter((animation) => animation.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY)
        .map((animation) => animation.finished.catch(() => undefined)),
    ),
  );

/** Parts of the page wider than the window, which one would have to scroll for. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Nothing runs out of the window. */
export async function fits(page: Page): Promise<void> {
  expect(await overflow(page)).toBeLessThanOrEqual(0);
}

/** The screen as it is, in light colours and in dark ones. */
export async function holds(page: Page): Promise<void> {
  await settled(page);
  expect(await barriers(page)).toEqual([]);
  await fits(page);
  await page.emulateMedia({ colorScheme: "dark" });
  await settled(page);
  expect(await barriers(page, "colours")).toEqual([]);
  await page.emulateMedia({ colorScheme: "light" });
}
