import { useState } from 'preact/hooks';
import { toField } from '../format/zone';
import { now } from '../live/clock';
import { allPools, zone } from '../live/store';
import { Field, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { words } from '../words';
import { address, daysOf, missing, type Asked } from './asked';
import { PoolPick } from './PoolPick';

const w = words.paper;
const endings = ['pdf', 'csv', 'xlsx'];
const kinds = Object.keys(w.kinds);
const byMonth = new Set(['month', 'calibration']);

/** Sheets for paper: which one, of which pools and days, by whom; then it opens to read, or comes as a file. */
export function PaperPage() {
  const today = toField(now.value, zone.value).slice(0, 10);
  const [kind, setKind] = useState('day-log');
  const [chosen, choose] = useState<string[] | null>(null);
  const [days, setDays] = useState<{ from: string; to: string } | null>(null);
  const [wrong, setWrong] = useState<Record<string, string>>({});
  // As it is typed: where the browser has no field for months it passes through what is none.
  const [typed, setTyped] = useState<string | null>(null);
  const month = typed ?? (days?.from ?? today).slice(0, 7);
  const span = byMonth.has(kind) ? daysOf(month) ?? { from: '', to: '' } : days ?? { from: today, to: '' };
  const takeMonth = (text: string) => { const whole = daysOf(text); setTyped(text); if (whole) setDays({ from: whole.from, to: '' }); };
  const asked: Asked = { kind, pools: chosen ?? [...allPools.value.keys()], ...span, by: who.value };
  const check = (e: Event) => {
    const found = missing(asked, byMonth.has(kind) ? { ...w, needDay: w.needMonth } : w);
    setWrong(found);
    if (Object.keys(found).length > 0) e.preventDefault();
  };
  const day = (name: 'from' | 'to', label: string) => (
    <Field name={name} label={label} error={wrong[name]}><input type="date" class="tall" value={span[name]} {...tie(name, wrong[name])} onInput={e => { setTyped(null); setDays({ ...span, [name]: e.currentTarget.value }); }} /></Field>);
  return (
    <div class="pages stack paper-page" data-testid="paper">
      <h1>{w.title}</h1>
      <p>{w.lead}</p>
      <p><a href="#/inspect" data-testid="to-inspect">{w.toInspect}</a></p>
      <div class="sheet card">
        <Field name="kind" label={w.kind} hint={w.says[kind]}><select class="tall" value={kind} {...tie('kind')} onChange={e => { setKind(e.currentTarget.value); setWrong({}); }}>{kinds.map(k => <option key={k} value={k}>{w.kinds[k]}</option>)}</select></Field>
        <PoolPick picked={asked.pools} onPick={choose} error={wrong['pools']} />
        {byMonth.has(kind)
          ? <Field name="month" label={w.month} error={wrong['from']}><input type="month" class="tall" value={month} {...tie('month', wrong['from'])} onInput={e => takeMonth(e.currentTarget.value)} /></Field>
          : <div class="ask-pair">{day('from', w.day)}{day('to', w.to)}</div>}
        <p class="hint">{w.clock(zone.value)}</p>
        <NameField name="by" label={w.name} error={wrong['by']} />
        <div class="inline paper-ways">
          <a class="button primary" href={address(asked, 'html')} target="_blank" rel="noopener" onClick={check} data-testid="paper-open">{w.open}</a>
          {endings.map(e => <a key={e} class="button" href={address(asked, e)} download onClick={check} data-testid={'paper-' + e}>{w.file(e)}</a>)}
        </div>
      </div>
    </div>
  );
}
