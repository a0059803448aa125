// The charts of the Plan page as a reader finds them.
import { expect, type Locator, type Page } from "@playwright/test";

/** Names of the page's parts. */
export const PARTS = {
  sideBySide: "Charts side by side",
  change: "Use this chart for your box",
  takeBack: "The chart was changed",
  design: "Design a chart",
  ladders: "Find a ladder",
  calendar: "Calendar file",
  setUp: "Set up your box with this chart",
} as const;

/** A part of the page by its name. */
export const part = (page: Page, name: keyof typeof PARTS): Locator =>
  page.getByRole("region", { name: PARTS[name], exact: true });

/** The choice of a chart by its name. */
export const chartChoice = (page: Page, name: string | RegExp): Locator =>
  part(page, "sideBySide").getByRole("radio", { name });

/** Opens the Plan page of a server and waits for its charts. */
export async function openCharts(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/plan`);
  await expect(page.getByRole("heading", { level: 2, name: PARTS.sideBySide })).toBeVisible();
}
