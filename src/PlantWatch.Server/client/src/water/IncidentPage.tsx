import { Fragment } from 'preact';
import { useState } from 'preact/hooks';
import { query } from '../api/http';
import type { PoolInfo } from '../contract';
import type { IncidentView, KindOfIncident } from '../contract.incident';
import { fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { allPools, circuitOfPool, poolViews, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';
import { DeclareForm } from './DeclareForm';
import { HoldClock } from './HoldClock';
import { AuthorityRows } from './HoldTable';
import { HoldTests } from './HoldTests';
import { CloseForm, NotesCard } from './IncidentForms';
import { WaterFrame } from './WaterFrame';

const w = words.incident;

const percent = (share: number) => fixed(Math.floor(share * 100), 0);
const nameOf = (poolId: string) => allPools.value.get(poolId)?.name ?? poolId;

/** An incident in a pool that shares the water closes this one too, and is worked on from its own page. */
function InSharedWater({ poolId }: { poolId: string }) {
  const others = (circuitOfPool(poolId)?.pools ?? []).filter(p => p.id !== poolId && poolViews.value.get(p.id)?.incidents?.some(i => i.kind !== 'deck_spill'));
  return <>{others.map(p => <p key={p.id} class="notice" data-testid="incident-beside">{w.inSharedWater(p.name)} <a href={link('incident', p.id)}>{w.toIt}</a></p>)}</>;
}

/** An incident that is open: closed to whom, the clock, the tests, what to do, and the way out. */
function Open({ incident, kind, onChange }: { incident: IncidentView; kind: KindOfIncident | undefined; onChange: () => void }) {
  const deck = incident.kind === 'deck_spill';
  const others = kind?.authorities.filter(a => a.authority !== incident.authority) ?? [];
  const own = kind?.authorities.find(a => a.authority === incident.authority);
  return (
    <article class="incident" data-testid="incident">
      <header class={deck ? 'incident-head deck' : 'incident-head'}>
        <strong>{deck ? w.deckOpen : w.closedTo}</strong><h2>{w.kinds[incident.kind]}</h2>
        <span>{w.happened(dayClock(incident.happenedAt, zone.value))}; {w.declaredBy(incident.declaredBy, dayClock(incident.declaredAt, zone.value))}</span>
        {incident.note && <span class="pre">{incident.note}</span>}
      </header>
      <div class="incident-body">
        <div class="stack">
          {incident.clock && !deck && <><HoldClock poolId={incident.poolId} name={incident.others.length > 0 ? nameOf(incident.poolId) : null} clock={incident.clock} authority={incident.authorityName} cyanurate={incident.cyanurate} said={incident.plan?.text} testId="hold" /><HoldTests clock={incident.clock} /></>}
          {incident.others.map(o => <Fragment key={o.poolId}><HoldClock poolId={o.poolId} name={o.name} clock={o.clock} authority={incident.authorityName} cyanurate={o.cyanurate} said={w.eachPool} testId={`hold-${o.poolId}`} />{o.clock.tests.length > 0 && <HoldTests clock={o.clock} />}</Fragment>)}
          {own && (deck || !incident.clock?.row) && <section class="sheet card"><AuthorityRows table={own} /></section>}
        </div>
        <div class="stack">
          {kind && <section class="sheet card steps-card"><h2>{w.steps}</h2><ol class="incident-steps">{kind.steps.map(s => <li key={s.code}>{s.text}</li>)}</ol><p class="hint">{w.advice}</p></section>}
          <NotesCard incident={incident} onDone={onChange} />
          <CloseForm incident={incident} onDone={onChange} />
          {others.length > 0 && <details class="sheet form-part"><summary><h2>{w.others}</h2></summary><div class="stack">{others.map(t => <AuthorityRows key={t.authority} table={t} />)}</div></details>}
        </div>
      </div>
    </article>
  );
}

function Past({ closed }: { closed: IncidentView[] }) {
  return (
    <section class="sheet card" data-testid="closed-incidents">
      <h2>{w.past}</h2>
      {closed.length === 0 ? <p class="hint">{w.noPast}</p> : <ul class="incident-notes">{closed.map(i => (
        <li key={i.id}><b>{w.kinds[i.kind]}</b>, {dayClock(i.happenedAt, zone.value)}
          <span class="under block">{i.closed!.by ? w.closedBy(i.closed!.by, dayClock(i.closed!.at, zone.value)) : w.poolGone}{i.kind !== 'deck_spill' && `; ${w.share(percent(i.closed!.share))}${i.closed!.others.map(o => `; ${nameOf(o.poolId)}: ${w.share(percent(o.share))}`).join('')}`}</span>
          {i.closed!.why && <span class="block pre">{i.closed!.why}</span>}</li>))}</ul>}
    </section>
  );
}

function Incidents({ pool }: { pool: PoolInfo }) {
  const [another, setAnother] = useState(false);
  const live = poolViews.value.get(pool.id)?.incidents;
  const plans = usePolled<KindOfIncident[]>('/incidents/plans' + query({ pool: pool.id }));
  // What is open travels with the pool; what is closed is asked for again when that list changes.
  const all = usePolled<IncidentView[]>('/incidents' + query({ pool: pool.id, open: live?.map(i => i.id).join() || null }), 60_000);
  const open = live ?? all.data?.filter(i => !i.closed) ?? [];
  const closed = all.data?.filter(i => i.closed) ?? [];
  const kinds = plans.data;
  if (!kinds) return <p class="empty">{plans.failed ? words.error.unreachable : words.overview.waiting}</p>;
  return (
    <div class="incident-page" data-testid="incident-page">
      <InSharedWater poolId={pool.id} />
      {open.map(i => <Open key={i.id} incident={i} kind={kinds.find(k => k.kind === i.kind)} onChange={all.reload} />)}
      {open.length === 0 || another
        ? <DeclareForm poolId={pool.id} kinds={kinds} onDone={() => { setAnother(false); all.reload(); }} />
        : <div><button type="button" onClick={() => setAnother(true)}>{w.more}</button></div>}
      <Past closed={closed} />
    </div>
  );
}

export function IncidentPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="incident">{pool => <Incidents key={pool.id} pool={pool} />}</WaterFrame>;
}
