import { useState } from 'preact/hooks';
import { get } from '../api/http';
import type { PaperView } from '../contract.paper';
import { toField } from '../format/zone';
import { now } from '../live/clock';
import { allPools, zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { words } from '../words';
import { address, missing, type Asked } from './asked';
import { PaperPart } from './PaperTable';
import { PoolPick } from './PoolPick';

const w = words.paper;

/** What the first step was answered with; pools are null while all are meant. */
interface Choice { pools: string[] | null; days: { from: string; to: string } }

/** The first step: which pools, which days, and who looks. */
function Ask({ choice, choose, onShow }: { choice: Choice; choose: (next: Choice) => void; onShow: (asked: Asked, view: PaperView) => void }) {
  const days = choice.days;
  const [wrong, setWrong] = useState<Record<string, string>>({});
  const [busy, setBusy] = useState(false);
  const asked: Asked = { kind: 'inspection', pools: choice.pools ?? [...allPools.value.keys()], ...days, by: who.value };
  const show = async () => {
    const found = missing(asked, w);
    setWrong(found);
    if (Object.keys(found).length > 0) return;
    setBusy(true);
    const answer = await get<PaperView>(address(asked, 'json').replace('/api/v1', ''));
    setBusy(false);
    if (answer.ok) onShow(asked, answer.value);
    else setWrong(Object.fromEntries(answer.problem?.errors.map(e => [e.field, e.text]) ?? [['', words.error.unreachable]]));
  };
  const day = (name: 'from' | 'to', label: string) => (
    <Field name={name} label={label} error={wrong[name]}><input type="date" class="tall" value={days[name]} {...tie(name, wrong[name])} onInput={e => choose({ ...choice, days: { ...days, [name]: e.currentTarget.value } })} /></Field>);
  return (
    <form class="sheet card" noValidate onSubmit={e => { e.preventDefault(); void show(); }}>
      <h2>{w.stepOne}</h2>
      <PoolPick picked={asked.pools} onPick={pools => choose({ ...choice, pools })} error={wrong['pools']} />
      <div class="ask-pair">{day('from', w.fromDay)}{day('to', w.to)}</div>
      <p class="hint">{w.clock(zone.value)}</p>
      <NameField name="by" label={w.looks} error={wrong['by']} />
      <OtherRemarks errors={wrong} shown={['pools', 'from', 'to', 'by']} />
      <div class="inline paper-ways"><button type="submit" class="primary" disabled={busy} data-testid="inspect-show">{busy ? words.loading : w.show}</button></div>
    </form>
  );
}

/** What an inspector sees, in two steps: pools and days, then the record of them; the same as PDF and tables. */
export function InspectPage() {
  const [choice, choose] = useState<Choice>(() => { const today = toField(now.peek(), zone.value).slice(0, 10); return { pools: null, days: { from: today.slice(0, 8) + '01', to: today } }; });
  const [shown, setShown] = useState<{ asked: Asked; view: PaperView } | null>(null);
  if (!shown) return <div class="pages stack paper-page" data-testid="inspect"><h1>{w.inspect}</h1><p>{w.inspectLead}</p><Ask choice={choice} choose={choose} onShow={(asked, view) => setShown({ asked, view })} /></div>;
  const { asked, view } = shown;
  return (
    <div class="pages stack inspect-view" data-testid="inspect-view">
      <h1>{view.title}</h1>
      <div class="inline paper-ways no-print">
        <button type="button" onClick={() => setShown(null)} data-testid="inspect-back">{w.back}</button>
        <a class="button" href={address(asked, 'html')} target="_blank" rel="noopener" data-testid="inspect-open">{w.open}</a>
        {['pdf', 'csv', 'xlsx'].map(e => <a key={e} class="button" href={address(asked, e)} download data-testid={'inspect-' + e}>{w.file(e)}</a>)}
      </div>
      {view.sections.map((s, i) => <PaperPart key={i} section={s} />)}
      <p class="hint paper-foot">{view.foot}</p>
    </div>
  );
}
