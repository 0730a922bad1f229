// A development aid: takes pictures of pages at 390 and 1280 px, light and dark, from a running server.
// node dev/pictures.mjs <folder> <address> [route ...]   CHROMIUM names the browser, /usr/bin/chromium otherwise.

import { mkdir } from 'node:fs/promises';
import { chromium } from 'playwright-core';

const [folder = 'pictures', address = 'http://127.0.0.1:5080', ...routes] = process.argv.slice(2);
const shown = routes.length ? routes : ['', 'pool/main', 'probe/main-ph', 'check/main', 'alarms', 'pumps', 'record'];
const widths = (process.env.WIDTHS ?? '390,1280').split(',').map(Number);
const schemes = (process.env.SCHEMES ?? 'light,dark').split(',');

await mkdir(folder, { recursive: true });
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
for (const width of widths) for (const colorScheme of schemes) {
  const page = await browser.newPage({ viewport: { width, height: width < 800 ? 844 : 900 }, colorScheme, hasTouch: width < 800, deviceScaleFactor: 1, timezoneId: 'Europe/Berlin' });
  page.on('console', m => { if (['error', 'warning'].includes(m.type())) console.log(`[${width} ${colorScheme}] ${m.text()}`); });
  page.on('pageerror', e => console.log(`[${width} ${colorScheme}] ${e.stack}`));
  for (const route of shown) {
    await page.goto(`${address}/#/${route}`);
    await page.waitForTimeout(1500);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (wide > 0) console.log(`[${width}] #/${route} scrolls sideways by ${wide} px`);
    await page.screenshot({ path: `${folder}/${route.replaceAll('/', '-') || 'overview'}-${width}-${colorScheme}.png`, fullPage: process.env.FULL !== '0' });
  }
  await page.close();
}
await browser.close();
