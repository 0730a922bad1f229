import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';

const template = new URL('./worker.js', import.meta.url);

/** Writes /sw.js beside the built page, with the names of all its files and a version made from their content. */
export function serviceWorker() {
  let folder = '';
  return {
    name: 'plantwatch-service-worker',
    apply: 'build',
    configResolved(config) { folder = resolve(config.root, config.build.outDir); },
    async closeBundle() {
      const files = (await readdir(folder, { recursive: true, withFileTypes: true })).filter(f => f.isFile())
        .map(f => join(f.parentPath, f.name)).filter(f => !f.endsWith('sw.js') && !f.endsWith('.map')).sort();
      const hash = createHash('sha256');
      for (const file of [...files, template]) hash.update(await readFile(file));
      const paths = files.map(f => '/' + f.slice(folder.length).replaceAll('\\', '/').replace(/^\//, '')).map(p => (p === '/index.html' ? '/' : p));
      const text = (await readFile(template, 'utf8')).replace('__VERSION__', hash.digest('hex').slice(0, 16)).replace('__SHELL__', JSON.stringify(paths));
      await writeFile(join(folder, 'sw.js'), text);
    },
  };
}
