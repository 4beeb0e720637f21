import { startBrowser } from '../e2e/support/browser.ts';
import { startDemo } from '../e2e/support/demo.ts';
import { openTablet } from '../e2e/support/floor.ts';

const demo = await startDemo();
const browser = await startBrowser();
for (const [w, h, dark] of [
  [1280, 800, false],
  [390, 844, true],
] as const) {
  const { page } = await openTablet(browser, demo.url, {
    badge: 'BADGE-3301',
    hash: '#/log/shift',
    width: w,
    height: h,
    dark,
  });
  await page.getByTestId('plot-reasons').waitFor();
  await page.getByTestId('span-24').click();
  await page.waitForTimeout(500);
  await page.screenshot({ path: `/tmp/sh-${w}.png` });
  await page.locator('main').evaluate((m) => {
    m.scrollTop = 450;
  });
  await page.waitForTimeout(200);
  await page.screenshot({ path: `/tmp/sh2-${w}.png` });
  if (w === 1280) {
    const [d] = await Promise.all([page.waitForEvent('download'), page.getByTestId('png-splices').click()]);
    await d.saveAs('/tmp/sh-plot.png');
    await page.emulateMedia({ media: 'print' });
    await page.pdf({ path: '/tmp/sh.pdf', format: 'A4' });
  }
  await page.context().close();
}
await browser.close();
await demo.stop();
