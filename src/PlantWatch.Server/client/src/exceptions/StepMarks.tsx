import type { ComponentChildren } from 'preact';
import type { ExceptionStepView, ExceptionView } from '../contract.exceptions';
import { clock, dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';

const w = words.exceptions;

/** Done is a filled mark, waited for a dashed one, left out a stroke: shapes, and the word beside them. */
function Dot({ look }: { look: 'done' | 'waits' | 'none' }) {
  return (
    <svg class="step-dot" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      {look === 'done' ? <circle class="dot-full" cx="8" cy="8" r="6.5" /> : look === 'waits' ? <circle class="dot-open" cx="8" cy="8" r="6" /> : <path class="dot-none" d="M3 8h10" />}
    </svg>
  );
}

function Mark({ name, look, at, after, who, children }: { name: string; look: 'done' | 'waits' | 'none'; at?: string | null; after?: number | null; who?: string | null; children?: ComponentChildren }) {
  return (
    <li class={`step-mark look-${look}`} data-testid={`mark-${name}`} data-look={look}>
      <Dot look={look} />
      <b>{w.marks[name as keyof typeof w.marks]}</b>
      {look === 'done' ? <>
        {at && <span>{(after ?? 0) < 1080 ? clock(at, zone.value) : dayClock(at, zone.value)}</span>}
        {after !== null && after !== undefined && <span class="hint">{w.minutes(Math.round(after))}</span>}
        {who && <span class="step-who">{who}</span>}
        {children && <span class="hint">{children}</span>}
      </> : <span class="hint">{look === 'waits' ? w.notYet : w.nothing}</span>}
    </li>
  );
}

export const said = (s: ExceptionStepView) => [w.steps[s.kind], s.what?.text, s.text && words.quoted(s.text)].filter(Boolean).join(' ');

/** The four marks of a line: reading, action, retest, closed, each with time, minutes and name. */
export function StepMarks({ line }: { line: ExceptionView }) {
  const open = line.closing === 'none';
  const look = (there: unknown) => (there ? 'done' : open ? 'waits' : 'none');
  return (
    <ol class="step-marks">
      <Mark name="reading" look="done" at={line.readAt} who={line.readBy ?? (line.source === 'probe' ? w.probe : null)} />
      <Mark name="action" look={look(line.action)} at={line.action?.at ?? null} after={line.action?.minutes ?? null} who={line.action?.by ?? null}>{line.action && w.steps[line.action.kind]}</Mark>
      <Mark name="retest" look={look(line.retest)} at={line.retest?.at ?? null} after={line.retest?.minutes ?? null} who={line.retest?.by ?? null}>{line.retest && w.retests[line.retest.word]}</Mark>
      <Mark name="closed" look={look(line.closedAt)} at={line.closedAt} after={line.minutesToClosing} who={line.closedBy} />
    </ol>
  );
}
