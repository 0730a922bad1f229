import type { VolumeSignView, VolumeView } from '../contract.volume';
import { fixed } from '../format/number';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';

const w = words.volume;
const path = (pool: string) => `/pools/${encodeURIComponent(pool)}/volume`;
const disagrees = (v: VolumeView) => v.word === 'more' || v.word === 'less';

/** On the pool page: only where doses and the plant file disagree. */
export function VolumeNote({ poolId }: { poolId: string }) {
  const { data } = usePolled<VolumeView>(path(poolId), 600_000);
  if (!data || !disagrees(data)) return null;
  return (
    <section class="sheet card" data-testid="volume-note">
      <div class="card-head"><h2><WarnGlyph /> {data.word === 'more' ? w.more : w.less}</h2><a href={link('dose', poolId)}>{w.toDoses}</a></div>
      {data.says.slice(0, 3).map(s => <p key={s.code}>{s.text}.</p>)}
    </section>
  );
}

/** Below the doses: the answer, and every retest that it rests on. */
export function VolumeCard({ poolId }: { poolId: string }) {
  const { data } = usePolled<VolumeView>(path(poolId), 60_000);
  if (!data) return null;
  return (
    <section class="sheet card given-form" data-testid="volume" data-word={data.word}>
      <h2>{disagrees(data) && <WarnGlyph />} {w.title}</h2>
      {data.says.map(s => <p key={s.code} class={s.code === data.says[0]?.code ? '' : 'hint'}>{s.text}.</p>)}
      {data.signs.length > 0 && (
        <details><summary>{w.rests(data.signs.length)}</summary>
          <div class="scroll" tabIndex={0} role="region" aria-label={w.rests(data.signs.length)}><table class="lines">
            <thead><tr><th scope="col">{w.when}</th><th scope="col">{w.by}</th><th scope="col" class="n">{w.tells}</th><th scope="col" class="n">{w.weight}</th></tr></thead>
            <tbody>{data.signs.map(s => <Sign key={s.at + s.measurand + s.product} sign={s} alone={data.word === 'too_few'} />)}</tbody>
          </table></div>
        </details>)}
    </section>
  );
}

function Sign({ sign: s, alone }: { sign: VolumeSignView; alone: boolean }) {
  return (
    <tr><td>{fullClock(s.at, zone.value)}</td><td>{words.measurand[s.measurand]}, {s.product}{s.apart && !alone && <span class="under block">{w.apart}</span>}</td>
      <td class="n">{s.volume?.text ?? w.none}</td><td class="n">{`${fixed(100 * s.weight, 0)}\u00a0%`}</td></tr>
  );
}
