// How evenly the reading page of a one-hour script moves, and whether its memory stays flat over the
// hour. Printed, no bound: machines are noisy. Run it as DEVELOPERS.md says.
import { anHour, browser, frames, opened, work } from "./pages.mjs";

const settings = ["reading settings", { lead: 0 }];
const page = await opened("page", settings, false);
for (const [what, jumps] of [["from the top", 0], ["in the middle", 70], ["near the end", 138]]) {
  await page.keyboard.press("Home");
  for (let jump = 0; jump < jumps; jump++) await page.keyboard.press("Shift+PageDown");
  await page.keyboard.press("Space");
  await frames(page, what);
  await page.keyboard.press("Space");
}
await page.evaluate(() => document.getElementById("stage").focus());
await work(page);
await page.close();

const wound = await opened("page", settings, true);
await wound.clock.pauseAt(Date.now() + 60000);
await wound.keyboard.press("Space");
await anHour(wound);
await browser.close();
