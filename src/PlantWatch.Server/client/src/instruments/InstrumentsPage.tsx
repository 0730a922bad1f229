import { useEffect, useState } from 'preact/hooks';
import type { InstrumentView, VerificationView, VerifyRequest } from '../contract.instrument';
import { decimalsOf, fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { keptVerifications, verificationOutcomes, verifications } from '../outbox/verifications';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { setWho } from '../parts/person';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';
import { VerifyForm } from './VerifyForm';

const w = words.instruments;

/** A refused verification that is in the form. */
interface Mends { id: string; request: VerifyRequest }

function Past({ v }: { v: VerificationView }) {
  const d = decimalsOf(v.measurand);
  return <li data-testid="verification" data-word={v.word}><span class="mark">{v.word === 'within' ? <TickGlyph /> : <WarnGlyph />}<b>{w.verdicts[v.word]}</b></span> {words.measurand[v.measurand]}, {v.standard}: {w.line(fixed(v.reading, d), fixed(v.nominal, d), fixed(v.tolerance, d))}; {dayClock(v.verifiedAt, zone.value)}, {w.by(v.by)}</li>;
}

function Card({ instrument: i, open, mends, onOpen, onSent, onLeave }: { instrument: InstrumentView; open: boolean; mends: Mends | null; onOpen: () => void; onSent: (id: string) => void; onLeave: () => void }) {
  return (
    <li class="pump" data-testid={`instrument-${i.id}`}>
      <div class="pump-head"><b>{i.name}</b><span class="hint">{w.kinds[i.kind]}, {w.every(fixed(i.everyDays, 0))}</span></div>
      <ul>{i.tests.map(t => <li key={t.measurand} data-testid={`stands-${t.measurand}`} data-word={t.word}><span class="mark">{t.word === 'in_order' ? <TickGlyph /> : t.word === 'not_verified' ? null : <WarnGlyph />}<span>{words.measurand[t.measurand]}: <b>{w.words[t.word]}</b>{t.word === 'in_order' && t.dueAt && `, ${w.until(dayClock(t.dueAt, zone.value))}`}</span></span></li>)}</ul>
      {i.verifications.length > 0 && <details><summary>{w.history}</summary><ul>{i.verifications.map(v => <Past key={v.id} v={v} />)}</ul></details>}
      {open ? <VerifyForm key={mends?.id ?? ''} instrument={i} mends={mends?.request ?? null} onLeave={onLeave} onSent={onSent} /> : <button type="button" class="slim" data-testid={`verify-${i.id}`} onClick={onOpen}>{w.verify}</button>}
    </li>
  );
}

/** What the plant tests with, and whether it reads what it should. */
export function InstrumentsPage() {
  const { data, failed, reload } = usePolled<InstrumentView[]>('/instruments', 60_000);
  const [sent, setSent] = useState<string | null>(null);
  const outcome = sent ? verificationOutcomes.value.get(sent) : undefined;
  useEffect(() => { if (outcome?.kind === 'answered') reload(); }, [outcome]);
  const [forms, setForms] = useState<Readonly<Record<string, Mends | 'new'>>>({});
  const close = (of: string) => setForms(({ [of]: _, ...others }) => others);
  const mendsOf = (of: string) => { const form = forms[of]; return form === undefined || form === 'new' ? null : form; };
  // What was refused stays on the device until the mended one lies there too.
  const took = (of: string, id: string) => { const mended = mendsOf(of); if (mended) verifications.drop(mended.id); close(of); setSent(id); };
  const mend = (v: Mends) => {
    const of = v.request.instrumentId;
    if (mendsOf(of)?.id === v.id || (forms[of] !== undefined && !confirm(words.check.clearSure))) return;
    setWho(v.request.by);
    setForms({ ...forms, [of]: v });
  };
  const refused = keptVerifications.value.filter(v => v.refusal);
  return (
    <div class="pages stack">
      <h1>{w.title}</h1>
      <section class="sheet card">
        <p class="hint">{w.hint}</p>
        <p role="status" class={outcome ? 'notice' : 'sr'} data-testid="verify-said">{outcome?.kind === 'answered' ? w.saved(w.verdicts[outcome.answer.word]) : outcome?.kind === 'unreachable' ? w.waiting : ''}</p>
        {refused.map(v => <p key={v.id} class="notice bad" role="alert" data-testid="verify-refused">{w.refused}: {v.refusal!.errors.map(e => e.text).join(' ') || v.refusal!.title} {data?.some(i => i.id === v.request.instrumentId) && <><button type="button" class="slim" data-testid="verify-edit" onClick={() => mend(v)}>{words.outbox.edit}</button> </>}<button type="button" class="slim" onClick={() => { if (confirm(w.dropSure)) { verifications.drop(v.id); if (mendsOf(v.request.instrumentId)?.id === v.id) close(v.request.instrumentId); } }}>{words.outbox.drop}</button></p>)}
        {data === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : data.length === 0 ? <p class="hint">{w.none}</p> : <ul class="pump-list">{data.map(i => <Card key={i.id} instrument={i} open={forms[i.id] !== undefined} mends={mendsOf(i.id)} onOpen={() => setForms({ ...forms, [i.id]: 'new' })} onSent={id => took(i.id, id)} onLeave={() => close(i.id)} />)}</ul>}
        <p><a class="line-link" href={link('reagents')}>{w.reagents}</a></p>
      </section>
      <section class="sheet card"><h2>{w.checklist}</h2><ul class="kit-list">{w.list.map(l => <li key={l}>{l}</li>)}</ul></section>
    </div>
  );
}
