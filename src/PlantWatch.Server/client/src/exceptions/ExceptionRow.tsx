import type { ExceptionView, OwedView } from '../contract.exceptions';
import { span } from '../format/age';
import { clock, dayClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { PoolGlyph, PriorityGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';
import { NoteForm } from './NoteForm';
import { StepMarks, said } from './StepMarks';

const w = words.exceptions;

function Owes({ owed }: { owed: OwedView }) {
  if (owed.by === null) return <p class="mark owes" data-testid="owed" data-act={owed.act} data-overdue={false}><PoolGlyph state="due" /><span><b>{owed.who ?? w.onDuty}</b> {w.owes[owed.act]}.</span></p>;
  const left = Date.parse(owed.by) - now.value;
  return (
    <p class="mark owes" data-testid="owed" data-act={owed.act} data-overdue={left < 0}>{left < 0 ? <WarnGlyph /> : <PoolGlyph state="due" />}
      <span><b>{owed.who ?? w.onDuty}</b> {w.owes[owed.act]} {w.by(dayClock(owed.by, zone.value))}: <b>{left < 0 ? w.overdue(span(-left)) : w.left(span(left))}</b></span></p>
  );
}

/** The forms that settle what is owed. */
function Ways({ line }: { line: ExceptionView }) {
  const pool = line.poolId;
  if (line.grade === 'laboratory') return <a class="button" href={pool ? link('laboratory', pool) : link('laboratory')}>{w.resample}</a>;
  return <>
    <a class="button" href={pool ? link('check', pool) : link('check')} data-testid="to-test">{w.test}</a>
    {pool && line.quantity !== 'temperature' && <a class="button quiet" href={link('dose', pool)}>{w.dose}</a>}
  </>;
}

function Course({ line }: { line: ExceptionView }) {
  return (
    <details class="form-part"><summary>{w.course(line.steps.length)}</summary>
      <ol class="course">{line.steps.map((s, i) => (
        <li key={s.id + s.kind + i} class={s.withdrawn ? 'withdrawn' : ''}>
          <span>{dayClock(s.at, zone.value)} <span class="hint">{w.minutes(Math.round(s.minutes))}</span></span>
          <span>{said(s)}{s.word !== 'none' && <>: <b>{w.retests[s.word]}</b></>}{s.by && `, ${s.by}`}{s.withdrawn && <i>, {w.withdrawn}</i>}</span>
        </li>))}</ol>
    </details>
  );
}

/** One breach as a sentence with its marks; an open one says what is owed and leads to the form that settles it. */
export function ExceptionRow({ line, onDone }: { line: ExceptionView; onDone: () => void }) {
  const open = line.closing === 'none';
  return (
    <li class={`exception ${open ? 'is-open' : ''} of-${line.grade}`} data-testid={`exception-${line.poolId ?? line.circuit}-${line.quantity}`} data-closing={line.closing}>
      <div class="alarm-head">
        <span class="mark">{!open ? <TickGlyph /> : <PriorityGlyph priority={line.grade === 'operating' ? 'medium' : line.grade === 'laboratory' ? 'high' : 'critical'} />}<b>{w.grades[line.grade]}</b></span>
        <h3>{line.poolId ? <a href={link('pool', line.poolId)}>{line.place}</a> : line.place}: {line.name}</h3>
        <span class="hint">{dayClock(line.readAt, zone.value)} {'\u00b7'} {line.rule}</span>
      </div>
      <p>{line.reading.text}.{!open && line.closedAt && <> {w.marks.closed} {(line.minutesToClosing ?? 0) < 1080 ? clock(line.closedAt, zone.value) : dayClock(line.closedAt, zone.value)}, {w.closing[line.closing]}{line.closedBy && `, ${line.closedBy}`}{line.closedWhy && `: ${words.quoted(line.closedWhy)}`}.</>}</p>
      {open && line.readingWithdrawn && <p class="hint">{w.readingWithdrawn}</p>}
      <StepMarks line={line} />
      {line.owed && <Owes owed={line.owed} />}
      {open && <div class="inline"><Ways line={line} /></div>}
      {open && <NoteForm line={line} onDone={onDone} />}
      {line.steps.length > 0 && <Course line={line} />}
    </li>
  );
}
