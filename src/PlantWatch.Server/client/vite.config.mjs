import { defineConfig } from 'vite';
import { serviceWorker } from './worker/emit.mjs';

// The server to talk to while developing; a mock or a real one.
const server = process.env.PLANTWATCH_SERVER ?? 'http://127.0.0.1:5080';

/** The first picture needs what main.tsx brings after the words: the browser asks for it at once, not when it has read the file before. */
const early = {
  name: 'early',
  transformIndexHtml: {
    order: 'post',
    handler(html, { bundle }) {
      const chunks = Object.values(bundle ?? {}), wanted = new Set();
      const want = chunk => { if (!chunk || wanted.has(chunk.fileName)) return; wanted.add(chunk.fileName); for (const name of chunk.imports) want(bundle[name]); };
      want(chunks.find(c => c.type === 'chunk' && c.facadeModuleId?.endsWith('/src/start.tsx')));
      return [...wanted].filter(name => !html.includes(name)).map(name => ({ tag: 'link', attrs: { rel: 'modulepreload', href: '/' + name }, injectTo: 'head' }));
    },
  },
};

export default defineConfig({
  plugins: [early, serviceWorker()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  server: {
    host: '127.0.0.1',
    proxy: { '/api': server, '/live': { target: server, ws: true } },
  },
  build: {
    outDir: '../wwwroot',
    emptyOutDir: true,
    target: 'es2022',
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    // Data addresses are not in the page's content policy for fonts or scripts: every asset is a file.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  test: { include: ['src/**/*.test.ts'], setupFiles: ['dev/wordsFirst.ts'] },
});
