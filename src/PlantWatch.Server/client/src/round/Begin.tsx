import { useState } from 'preact/hooks';
import { clock } from '../format/zone';
import { ageAt, span } from '../format/age';
import { now, serverNow } from '../live/clock';
import { asHeard } from '../live/heard';
import { allPools, poolViews, site, zone } from '../live/store';
import { list } from '../overview/DueLine';
import { PoolGlyph } from '../parts/Glyph';
import { Remark, tie } from '../parts/Field';
import { MendLine } from '../parts/MendLine';
import { focusFirstWrong } from '../parts/mending';
import { words } from '../words';
import { dutyOf, inWalkingOrder, testsOf, usualTests, type Duty } from './due';
import { nameOfScreen } from './Frame';
import { newRound, newStop } from './round';
import { round, setRound } from './store';

const w = words.round;

/** A round that somebody left: where it stands, and how old its sample is. */
export function Unfinished({ onGo }: { onGo: () => void }) {
  const r = round.value!, stop = r.stops[r.at]!, age = ageAt(now.value, stop.draft.whenExact);
  return (
    <section class="sheet card" data-testid="unfinished"><h2>{w.unfinished}</h2>
      <p>{w.begunBy(r.who, clock(r.begunAt, zone.value))} {w.stands(allPools.value.get(stop.draft.poolId)?.name ?? stop.draft.poolId, nameOfScreen(r.screen))} {age !== null && stop.checkId === null && w.sampleAge(span(age))}</p>
      <div class="inline"><button type="button" class="primary" data-testid="go-on" onClick={onGo}>{w.goOn}</button>
        <button type="button" data-testid="end-round" onClick={() => { if (confirm(w.endSure)) setRound(null); }}>{w.setAside}</button></div>
    </section>
  );
}

function Line({ duty, taken, onTake }: { duty: Duty; taken: boolean; onTake: (take: boolean) => void }) {
  const pool = allPools.value.get(duty.poolId)!, what = duty.what.length > 0 ? duty.what : testsOf(usualTests, pool.disinfectant);
  const time = duty.dueAt === null ? '' : clock(duty.dueAt, zone.value);
  return (
    <li><label class="choice walk" data-testid={`walk-${duty.poolId}`} data-due={duty.overdue ? 'overdue' : duty.what.length > 0 ? 'due' : 'no'}>
      <input type="checkbox" checked={taken} onChange={e => onTake(e.currentTarget.checked)} />
      <span><b>{pool.name}</b><span class="block hint">{duty.what.length === 0 ? `${w.nothingDue}; ${w.takesIn(list(what))}` : <>{<PoolGlyph state="due" />} {duty.overdue ? w.overdue(list(what), time) : w.due(list(what), time)}{duty.byPlan && ` (${w.byPlan})`}</>}</span></span>
    </label></li>
  );
}

/** Who walks, and where: what is due is chosen already, in the order to walk. */
export function Begin() {
  const pools = site.value?.circuits.flatMap(c => c.pools) ?? [];
  const duties = inWalkingOrder(pools.map(p => dutyOf(p, poolViews.value.get(p.id), asHeard.value, now.value, zone.value)));
  const [chosen, choose] = useState<Record<string, boolean>>({});
  const [who, setWho] = useState('');
  const [errors, setErrors] = useState<Record<string, string>>({});
  const taken = (d: Duty) => chosen[d.poolId] ?? d.what.length > 0;
  const begin = () => {
    const walk = duties.filter(taken), wrong = { ...(who.trim() ? {} : { who: w.needWho }), ...(walk.length > 0 ? {} : { where: w.needPool }) };
    setErrors(wrong);
    if (Object.keys(wrong).length > 0) return focusFirstWrong();
    const stops = walk.map(d => newStop(d.poolId, d.what.length > 0 ? d.what : testsOf(usualTests, allPools.value.get(d.poolId)!.disinfectant), d.dueAt, d.overdue));
    setRound(newRound(who, stops, serverNow()));
  };
  if (pools.length === 0) return <p class="empty">{words.check.noPools}</p>;
  return (
    <form class="check-form" noValidate onSubmit={e => { e.preventDefault(); begin(); }} data-testid="begin-round">
      <section class="sheet form-part">
        <div class={`field ${errors['who'] ? 'wrong' : ''}`}><label class="label" for="f-round-who">{w.who}</label>
          <input class="tall" type="text" autocomplete="off" value={who} {...tie('round-who', errors['who'])} onInput={e => setWho(e.currentTarget.value)} /><p class="hint">{w.whoHint}</p><Remark name="round-who" text={errors['who']} /></div>
        <fieldset class={`field ${errors['where'] ? 'wrong' : ''}`}><legend class="label">{w.where}</legend><ul class="walk-list">{duties.map(d => <Line key={d.poolId} duty={d} taken={taken(d)} onTake={take => choose({ ...chosen, [d.poolId]: take })} />)}</ul><Remark name="where" text={errors['where']} /></fieldset>
      </section>
      <MendLine errors={errors} />
      <div class="thumb"><button type="submit" class="primary" data-testid="begin">{w.begin}</button></div>
    </form>
  );
}
