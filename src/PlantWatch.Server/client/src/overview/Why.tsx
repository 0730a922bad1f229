import type { PoolInfo, PoolView } from '../contract';
import { probesOfPool, probeViews } from '../live/store';
import { words } from '../words';

/** The sentences behind the state of a pool, worst first. What is due and limits that wait have lines of their own and are not said twice. */
function sentences(pool: PoolInfo, view: PoolView): string[] {
  const said = view.why.filter(w => !w.code.startsWith('check.is_') && w.code !== 'limits.unconfirmed').map(w => w.text);
  if (view.bottomVisible === false && !view.why.some(w => w.code.includes('bottom'))) said.push(words.overview.notVisible);
  if (said.length > 0) return said;
  // No alarm stands, but a probe may still want care: its own reasons tell.
  for (const probe of probesOfPool(pool.id)) {
    const v = probeViews.value.get(probe.id);
    if (v && v.raw === null && view.state !== 'unknown') said.push(`${probe.name}: ${words.overview.noReading}`);
    else if (v && v.standing !== 'good' && v.standing !== 'unknown') said.push(`${probe.name}: ${v.reasons[0]?.text ?? words.standing[v.standing]}`);
  }
  if (said.length > 0) return said;
  if (view.limits?.word === 'unconfirmed') return [];
  if (view.state === 'normal') return [words.overview.allWell];
  return view.state === 'unknown' ? [pool.limits.length === 0 ? words.overview.noLimits : words.overview.noState] : [];
}

export function Why({ pool, view, all, most = 3 }: { pool: PoolInfo; view: PoolView | undefined; all?: boolean; most?: number }) {
  if (!view) return <p class="why">{words.overview.noState}</p>;
  const said = sentences(pool, view);
  const shown = all ? said : said.slice(0, most);
  if (said.length === 0) return null;
  return (
    <ul class="why">
      {shown.map((text, i) => <li key={i}>{text}</li>)}
      {said.length > shown.length && <li>{words.overview.more(said.length - shown.length)}</li>}
    </ul>
  );
}
