import { allProbes, reading } from '../live/store';
import { LiveValue } from '../parts/LiveValue';
import { words } from '../words';
import type { SoFar } from './file';

const w = words.start.value;

/** The first values, live, and what is left to do. */
export function ValueStep({ file }: { file: SoFar }) {
  const probes = file.probes.map(p => allProbes.value.get(p.id)).filter(p => p !== undefined);
  const there = probes.some(p => reading(p.id).value !== null);
  const left: [boolean, string, string][] = [
    [!file.confirmed, w.volume, '#/plant-file'], [file.pack !== '', w.limits, '#/limits'], [file.pack === '', w.own, '#/plant-file'], [!file.has('people'), w.people, '#/plant-file'],
    [!file.checks, w.checks, '#/plant-file'], [!file.pumps, w.pumps, '#/plant-file'], [true, w.telling, '#/plant-file'],
  ];
  return (
    <div class="stack">
      <p role="status" data-testid="first-value"><b>{file.probes.length === 0 ? w.noProbe : there ? w.there : w.waiting}</b></p>
      <ul class="first-values">{probes.map(p => <li key={p.id}><span class="label">{p.name}</span><LiveValue probe={p} /></li>)}</ul>
      <div class="inline"><a class="button" href="#/" data-testid="to-overview">{w.toOverview}</a>{file.probes.length === 0 && <a class="button" href="#/check">{w.toCheck}</a>}</div>
      <h3>{w.remains}</h3>
      <ul class="plain" data-testid="remains">{left.filter(([open]) => open).map(([, text, to]) => <li key={text}><a class="line-link" href={to}>{text}</a></li>)}</ul>
    </div>
  );
}
