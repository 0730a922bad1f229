import type { Signal } from '@preact/signals';
import { span } from '../format/age';
import { fixed, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import type { Mark } from './marks';
import type { Summary } from './summary';
import type { Shown } from './window';

const w = words.stripTools.summary;

/** What a strip shows, in words, for who does not see it. */
export function SummaryText({ summary, tests, shown, decimals, unit, testId, lines, flow }: { summary: Summary; tests: Mark[]; shown: Signal<Shown>; decimals: number; unit: string; testId: string; lines: boolean; flow: boolean }) {
  const { from, to } = shown.peek(), seen = tests.filter(m => m.t >= from && m.t <= to);
  // A flow switch has no figures: it flows or it does not.
  const v = (n: number) => flow ? n >= 0.5 ? words.flow : words.noFlow : `${fixed(n, decimals)} ${unitText(unit)}`.trim(), at = (t: number) => dayClock(t, zone.value);
  const said = !lines ? [] : !summary.last ? [w.none]
    : flow ? [w.last(v(summary.last.v), at(summary.last.t)), summary.least!.v < 0.5 ? w.stopped(at(summary.least!.t)) : w.flowed, w.gaps(summary.gaps, span(summary.longestGap))]
    : [w.last(v(summary.last.v), at(summary.last.t)), w.least(v(summary.least!.v), at(summary.least!.t)), w.most(v(summary.most!.v), at(summary.most!.t)), w.gaps(summary.gaps, span(summary.longestGap))];
  return <p class="sr" data-testid={`${testId}-summary`}>{[...said, w.tests(seen.length)].join(' ')}</p>;
}
