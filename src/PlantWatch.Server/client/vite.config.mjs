import { defineConfig } from 'vite';

// The server to talk to while developing; a mock or a real one.
const server = process.env.PLANTWATCH_SERVER ?? 'http://127.0.0.1:5080';

export default defineConfig({
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
  test: { include: ['src/**/*.test.ts'] },
});
