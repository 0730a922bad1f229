// The display on the wall for a day, compressed: does its memory stay flat? See docs/campaigns.md.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { faster } from './faster.mjs';

const top = fileURLToPath(new URL('../../..', import.meta.url)), client = `${top}src/PlantWatch.Server/client/`;
const { chromium } = createRequire(client)('playwright-core');
const given = Object.fromEntries(process.argv.slice(2).map((a, i, all) => (a.startsWith('--') ? [a.slice(2), all[i + 1]] : [])).filter(p => p.length));
const hours = Number(given.hours ?? 24), speed = Number(given.speed ?? 24), port = Number(given.port ?? 5655), board = given.board ?? 'wall-display';
const minute = 60_000, begin = Date.now(), lasts = hours * 60 * minute / speed;
const wait = ms => new Promise(done => setTimeout(done, ms));
const MB = bytes => (bytes / 1_048_576).toFixed(2);

let server;
const serve = () => {
  server = spawn(process.execPath, ['--import', new URL('./faster.mjs', import.meta.url).href, `${client}mock/server.mjs`, '--port', String(port)], {
    stdio: 'inherit', env: { ...process.env, PLANTWATCH_SPEED: String(speed), PLANTWATCH_BEGIN: String(begin) },
  });
};
const stop = () => new Promise(done => { server.once('exit', done); server.kill(); });

serve();
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--enable-precise-memory-info'] });
const page = await browser.newPage({ viewport: { width: 1280, height: 720 }, serviceWorkers: 'block' });
const errors = [];
page.on('pageerror', e => errors.push(String(e)));
page.on('console', m => { if (m.type() === 'error' && !/ERR_|Failed to load|EventSource/.test(m.text())) errors.push(m.text()); });
let loads = 0;
page.on('load', () => loads++);
await page.addInitScript(faster(speed, begin));
await wait(2_000);
await page.goto(`http://127.0.0.1:${port}/#/wall/${board}`);
await page.waitForSelector('[data-testid=wall] canvas');
const cdp = await page.context().newCDPSession(page);
await cdp.send('Performance.enable');

async function measure() {
  // What is on its way at the moment is no leak: the least of several looks counts.
  let usedSize = Infinity;
  for (let i = 0; i < 6; i++) {
    await cdp.send('HeapProfiler.collectGarbage');
    usedSize = Math.min(usedSize, (await cdp.send('Runtime.getHeapUsage')).usedSize);
    await wait(700);
  }
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = name => metrics.find(m => m.name === name)?.value ?? 0;
  return { heap: usedSize, nodes: of('Nodes'), listeners: of('JSEventListeners'), live: await page.getAttribute('[data-testid=alarm-bar]', 'data-live'), canvases: await page.locator('canvas').count() };
}

const rows = [];
async function note(at) {
  const m = await measure();
  rows.push(m);
  console.log(`| ${at} | ${((Date.now() - begin) * speed / 3_600_000).toFixed(1)} h | ${MB(m.heap)} | ${m.nodes} | ${m.listeners} | ${m.canvases} | ${m.live} |`);
}

console.log(`\n${new Date(begin).toISOString().slice(0, 16)}Z, ${board}, ${hours} h at ${speed} times the speed; ${cpus().length} cores, Chromium ${browser.version()}\n`);
console.log('| when | time on the wall | JS heap after collecting, MB | DOM nodes | listeners | canvases | state |\n|---|---|---|---|---|---|---|');
// What is fetched and compiled once is not what a day adds.
await wait(Math.min(60_000, lasts / 20));
await note('start');
let away = 0;
for (let tenth = 1; tenth <= 10; tenth++) {
  const until = begin + 2_000 + lasts * tenth / 10;
  if (tenth === 3 || tenth === 7) {
    // The server goes for twenty minutes of the wall's time and comes back.
    await stop();
    await wait(20 * minute / speed);
    if (await page.locator('[data-testid=wall-dead]').count()) away++;
    serve();
  }
  await wait(Math.max(0, until - Date.now()));
  await note(`${tenth}/10`);
}
const first = rows[0], last = rows.at(-1), grown = last.heap - first.heap;
// A megabyte is more than differs from look to look; a leak of one kilobyte a redraw would be eighty times that in a day.
const flat = grown < 1_048_576 && last.nodes < first.nodes * 1.25 + 200 && last.listeners < first.listeners * 1.25 + 50;
console.log(`\nHeap ${grown >= 0 ? 'grew' : 'shrank'} by ${MB(Math.abs(grown))} MB; the connection was lost and said so ${away} of 2 times; loaded ${loads} time(s); ${errors.length} errors of the page${errors.length ? ': ' + errors.slice(0, 3).join(' / ') : ''}.`);
console.log(flat && last.live === 'live' && errors.length === 0 && away === 2 ? 'Flat.' : 'NOT flat, or not well.');
await browser.close();
await stop();
process.exit(flat && last.live === 'live' && errors.length === 0 && away === 2 ? 0 : 1);
