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
  // What is missing is told once somebody has asked for the sheet.
  const [told, tell] = useState(false);
  // As it is typed: where the browser has no field for months it passes through what is none.
  const [typed, setTyped] = useState<string | null>(null);
  const month = typed ?? (days?.from ?? today).slice(0, 7);
  const span = byMonth.has(kind) ? daysOf(month) ?? { from: '', to: '' } : days ?? { from: today, to: '' };
  const takeMonth = (text: string) => { const whole = daysOf(text); setTyped(text); if (whole) setDays({ from: whole.from, to: '' }); };
  const asked: Asked = { kind, pools: chosen ?? [...allPools.value.keys()], ...span, by: who.value };
  const lacks = missing(asked, byMonth.has(kind) ? { ...w, needDay: w.needMonth } : w), wrong = told ? lacks : {};
  // There is no sheet, and no address of one, while something is missing: not for a middle click or a copied link either.
  const way = (ending: string, text: string, look: string, more: object) => Object.keys(lacks).length > 0
    ? <button key={ending} type="button" class={look} onClick={() => tell(true)} data-testid={'paper-' + (ending === 'html' ? 'open' : ending)}>{text}</button>
    : <a key={ending} class={`button ${look}`} href={address(asked, ending)} {...more} data-testid={'paper-' + (ending === 'html' ? 'open' : ending)}>{text}</a>;
  const day = (name: 'from' | 'to', label: string) => (
    <Field name={name} label={label} error={wrong[name]}><input type="date" class="tall" value={span[name]} {...tie(name, wrong[name])} onInput={e => { setTyped(null); setDays({ ...span, [name]: e.currentTarget.value }); }} /></Field>);
  return (
    <div class="pages stack paper-page" data-testid="paper">
      <h1>{w.title}</h1>
      <p>{w.lead}</p>
      <p><a href="#/inspect" data-testid="to-inspect">{w.toInspect}</a></p>
      <div class="sheet card">
        <Field name="kind" label={w.kind} hint={w.says[kind]}><select class="tall" value={kind} {...tie('kind')} onChange={e => { setKind(e.currentTarget.value); tell(false); }}>{kinds.map(k => <option key={k} value={k}>{w.kinds[k]}</option>)}</select></Field>
        <PoolPick picked={asked.pools} onPick={choose} error={wrong['pools']} />
        {byMonth.has(kind)
          ? <Field name="month" label={w.month} error={wrong['from']}><input type="month" class="tall" value={month} {...tie('month', wrong['from'])} onInput={e => takeMonth(e.currentTarget.value)} /></Field>
          : <div class="ask-pair">{day('from', w.day)}{day('to', w.to)}</div>}
        <p class="hint">{w.clock(zone.value)}</p>
        <NameField name="by" label={w.name} error={wrong['by']} />
        <div class="inline paper-ways">
          {way('html', w.open, 'primary', { target: '_blank', rel: 'noopener' })}
          {endings.map(e => way(e, w.file(e), '', { download: true }))}
        </div>
      </div>
    </div>
  );
}
