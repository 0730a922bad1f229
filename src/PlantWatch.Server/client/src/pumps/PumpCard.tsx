import type { PumpInfo } from '../contract';
import { fixed } from '../format/number';
import { isDead } from '../live/dead';
import { allPumps, nameOf, pumpViews } from '../live/store';
import { Age } from '../parts/Age';
import { PumpGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';

/** Where the plant file usually sets the line; the server's own figure wins when it tells one. */
const usualLow = 15;

function Tank({ percent, litres, at, lowAt }: { percent: number; litres: number | null; at: string | null; lowAt: number }) {
  const low = percent <= lowAt;
  return (
    <div class="tank">
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" class={low ? 'low' : ''} aria-hidden="true"><rect class="tank-all" width="100" height="8" /><rect class="tank-full" width={Math.max(0, Math.min(100, percent))} height="8" /></svg>
      <span>{low && <WarnGlyph />} <b>{fixed(percent, 0)} %</b>{litres !== null && ` \u2248 ${fixed(litres * percent / 100, 0)} L`}{low && ` \u2013 ${words.pumps.low}`} <Age at={at} /></span>
    </div>
  );
}

/** A dosing pump: what it does, since when, and what is left in its tank. */
export function PumpCard({ pump, small, own }: { pump: PumpInfo; small?: boolean; own?: boolean }) {
  const view = pumpViews.value.get(pump.id);
  const activity = view?.activity ?? 'unknown', old = isDead() && activity !== 'unknown';
  const home = pump.poolId ? nameOf(pump.poolId) : words.poolPage.common;
  // Two of one name are told apart by their pool, which then is no mere hint.
  const twin = [...allPumps.value.values()].some(p => p.id !== pump.id && p.name === pump.name);
  return (
    <li class={`pump a-${activity} ${view?.stale || old ? 'stale' : ''}`} data-testid={`pump-${pump.id}`} data-activity={activity}>
      <div class="pump-head"><span><b>{own ? pump.name : <a href={link('pump', pump.id)} data-testid={`to-pump-${pump.id}`}>{pump.name}</a>}</b>{twin && `, ${home}`}</span>
        <span class="mark"><PumpGlyph activity={activity} /><b>{old ? words.live.last(words.pump[activity]) : words.pump[activity]}</b></span></div>
      <p class="hint">{pump.productName}{!twin && `, ${home}`}
        {view?.since && <>; {words.pumps.since} <Age at={view.since} bare /></>}
        {view?.stale && <b>; {words.overview.silent} <Age at={view.heardAt} bare /></b>}</p>
      {view?.tankPercent != null && <Tank percent={view.tankPercent} litres={pump.tankLitres} at={view.tankAt} lowAt={pump.tankLowPercent ?? usualLow} />}
      {!small && <a class="button" href={link('pumps', pump.id)} data-testid={`note-${pump.id}`}>{words.pumps.write}</a>}
    </li>
  );
}
