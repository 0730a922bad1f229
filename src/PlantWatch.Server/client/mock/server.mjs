// A development aid: answers /api/v1 and streams /live like the server would, with invented numbers, and serves the built pages
// with the strict content policy. `node mock/server.mjs [--port 5080] [--empty]`; killing it is a server restart.

import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { randomUUID } from 'node:crypto';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { site, probes, valueAt } from './plant.mjs';
import { circuitView, empty, iso, ledger } from './views.mjs';
import { api, state } from './api.mjs';
import { lines } from './boards.mjs';

const args = process.argv.slice(2);
const port = Number(args[args.indexOf('--port') + 1] || 5080) || 5080;
const bare = args.includes('--empty');
const root = fileURLToPath(new URL('../../wwwroot', import.meta.url));
const end = '\u001e';
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; font-src 'self'; manifest-src 'self'";
const types = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml' };
const streams = new Map();
let version = 1;

const call = (target, ...a) => JSON.stringify({ type: 1, target, arguments: a }) + end;
const tell = text => { for (const s of streams.values()) if (s.ready) s.response.write(`data: ${text}\n\n`); };
const view = c => (bare ? empty(c) : circuitView(c, Date.now(), version, state));

setInterval(() => { version++; for (const c of site.circuits) tell(call('circuit', view(c))); }, 1000);
setInterval(() => tell(call('health', { at: iso(Date.now()), broker: 'embedded', plantFile: [], ledger: bare ? empty(site.circuits[0]).ledger : ledger(Date.now()) })), 5000);
setInterval(() => {
  if (bare) return;
  const t = Date.now();
  for (const c of site.circuits) tell(call('readings', { circuit: c.id, readings: c.probes.filter(p => p.id !== 'spa-ph').map(p => { const v = valueAt(p.id, t); return { s: p.id, t, r: v, v, g: true }; }) }));
}, 1000);

async function body(request) {
  let text = '';
  for await (const chunk of request) text += chunk;
  return text;
}

function live(request, response, url) {
  if (url.pathname === '/live/negotiate') {
    const id = randomUUID();
    return json(response, 200, { negotiateVersion: 1, connectionId: id, connectionToken: id, availableTransports: [{ transport: 'ServerSentEvents', transferFormats: ['Text'] }] });
  }
  const id = url.searchParams.get('id');
  if (request.method === 'GET') {
    response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
    response.write(':\n\n');
    streams.set(id, { response, ready: false });
    request.on('close', () => streams.delete(id));
    return;
  }
  return body(request).then(text => {
    const s = streams.get(id);
    if (s && text.includes('"protocol"')) {
      s.response.write(`data: {}${end}\n\n`);
      s.ready = true;
      setTimeout(() => { s.response.write(`data: ${call('boards', lines)}\n\n`); for (const c of site.circuits) s.response.write(`data: ${call('circuit', view(c))}\n\n`); }, 50);
    }
    response.writeHead(200).end();
  });
}

function json(response, status, value) {
  response.writeHead(status, { 'Content-Type': 'application/json' }).end(JSON.stringify(value));
}

createServer(async (request, response) => {
  const url = new URL(request.url, 'http://localhost');
  try {
    if (url.pathname.startsWith('/live')) return await live(request, response, url);
    if (url.pathname.startsWith('/api/v1/')) {
      const text = await body(request);
      return json(response, ...api(request.method, url, text ? JSON.parse(text) : null, bare));
    }
    const path = normalize(join(root, url.pathname === '/' ? 'index.html' : url.pathname));
    const file = await readFile(path);
    response.writeHead(200, { 'Content-Type': types[extname(path)] ?? 'application/octet-stream', 'Content-Security-Policy': policy }).end(file);
  } catch (error) {
    json(response, error.code === 'ENOENT' ? 404 : 500, { title: String(error) });
  }
}).listen(port, '127.0.0.1', () => console.log(`mock of ${probes.length} probes on http://127.0.0.1:${port}`));
