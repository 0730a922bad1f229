import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { query } from '../api/http';
import type { AlarmHealthView, BusyAlarmView } from '../contract.laboratory';
import { locale } from '../format/language';
import { coarse } from '../format/number';
import { dayClock, toField } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';

const w = words.alarmHealth;
const say = (v: number) => coarse(v, 2);

/** A month such as 2026-11, in the language of the page. */
const monthOf = (month: string) => new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(Date.parse(month));

function Bars({ view }: { view: AlarmHealthView }) {
  const most = Math.max(1, ...view.days.map(d => d.count));
  const wide = 20;
  const host = useRef<HTMLDivElement>(null);
  // Where there is no room for the whole month its last days are seen first.
  useLayoutEffect(() => { host.current!.scrollLeft = host.current!.scrollWidth; }, [view.month]);
  return (
    <div class="scroll" ref={host} tabIndex={0} role="region" aria-label={w.days}><svg class="health-bars" viewBox={`0 0 ${view.days.length * wide} 96`} role="img" aria-label={w.daysSaid(String(Math.max(0, ...view.days.map(d => d.count))))}>
      {view.days.map((d, i) => (
        <g key={d.from}><title>{dayClock(d.from, zone.value)}: {d.count}</title>
          <rect x={i * wide + 2} width={wide - 4} y={76 - 60 * d.count / most} height={60 * d.count / most} />
          {d.count > 0 && <text x={i * wide + wide / 2} y={72 - 60 * d.count / most}>{d.count}</text>}
          {(i + 1) % 5 === 0 && <text x={i * wide + wide / 2} y={92}>{i + 1}</text>}
        </g>))}
      <line x1="0" x2={view.days.length * wide} y1="76.5" y2="76.5" />
    </svg></div>
  );
}

function Busy({ rows }: { rows: BusyAlarmView[] }) {
  return rows.length === 0 ? <p class="hint">{w.none}</p> : (
    <ol class="health-list">{rows.map(b => (
      <li key={b.rule + b.subject}><span><a href={link('rules', b.rule)}>{b.title}</a> <span class="hint">{b.rule} {'\u00b7'} {b.subjectName}</span></span><span class="n"><b>{b.count}</b> <span class="hint">{say(100 * b.share)} %</span></span></li>))}</ol>);
}

function Figures({ view }: { view: AlarmHealthView }) {
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label={w.figure}><table class="lines health-figures">
      <thead><tr><th scope="col">{w.figure}</th><td>{w.here}</td><td>{w.target}</td></tr></thead>
      <tbody>{view.figures.map(f => (
        <tr key={f.key} data-testid={`figure-${f.key}`}><th scope="row">{f.name}</th>
          <td class="n">{f.meets === true ? <TickGlyph /> : f.meets === false ? <WarnGlyph /> : null}{f.meets !== null && <span class="sr">{f.meets ? w.meets : w.not}</span>} {f.value === null ? '\u2013' : say(f.value)} {f.unit}</td>
          <td>{f.target}{f.provenance && <span class="hint block">{w.provenance[f.provenance]}</span>}</td></tr>))}</tbody>
    </table></div>);
}

export function AlarmHealthPage() {
  const [month, setMonth] = useState(() => toField(Date.now(), zone.value).slice(0, 7));
  const [people, setPeople] = useState('1');
  const { data, failed, problem } = usePolled<AlarmHealthView>('/alarm-health' + query({ month, people: people || null }));
  return (
    <div class="pages stack health-page">
      <h1>{words.pageNames.pages.alarmHealth}</h1>
      <div class="inline no-print">
        <label class="label">{w.month} <input type="month" class="tall" value={month} data-testid="health-month" onChange={e => setMonth(e.currentTarget.value)} /></label>
        <label class="label">{w.people} <input type="number" min="1" max="100" class="short" value={people} onChange={e => setPeople(e.currentTarget.value)} /></label>
        <button type="button" onClick={() => print()}>{w.print}</button>
      </div>
      {data === null ? <p class="hint" role="status">{problem?.errors[0]?.text ?? (failed ? words.error.unreachable : words.loading)}</p> : <>
        <section class="sheet card"><h2>{monthOf(data.month)}</h2><p data-testid="health-lead"><b>{w.lead(String(data.told), say(data.perHour))}</b></p><p class="hint" data-testid="health-observed">{w.observed(dayClock(data.from, zone.value), dayClock(data.to, zone.value))}</p><p class="hint">{w.note}</p><h3>{w.days}</h3><Bars view={data} /></section>
        <section class="sheet card"><Figures view={data} /><p class="hint">{w.source}</p></section>
        <section class="sheet card"><h2>{w.busiest}</h2><Busy rows={data.busiest} /></section>
        <section class="sheet card"><h2>{w.chattering}</h2><Busy rows={data.chattering} /></section>
        <section class="sheet card"><h2>{w.stale}</h2>{data.stale.length === 0 ? <p class="hint">{w.none}</p> : <ol class="health-list">{data.stale.map(s => <li key={s.rule + s.subject + s.from}><span>{s.title} <span class="hint">{s.rule} {'\u00b7'} {s.subjectName}</span></span><span class="hint">{dayClock(s.from, zone.value)} {w.until} {dayClock(s.to, zone.value)}</span></li>)}</ol>}</section>
      </>}
    </div>
  );
}
