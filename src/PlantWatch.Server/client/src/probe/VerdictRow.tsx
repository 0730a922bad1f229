import type { JudgementView, ProbeInfo, WithU } from '../contract';
import { fixed, signed, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { StandingGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const pm = (x: WithU, d: number, sign = false) => `${sign ? signed(x.value, d) : fixed(x.value, d)}\u00a0\u00b1\u00a0${fixed(x.u, d)}`;

/** One verdict in a few lines: what was found, by what, and what the figures were. Only what is not well stands out. */
export function VerdictRow({ j, probe, since, doubted }: { j: JudgementView; probe: ProbeInfo; since: string | undefined; doubted: boolean }) {
  const d = probe.decimals, unit = unitText(probe.unit);
  const test = j.measurand === 'orp' ? words.answer.expected : words.answer.test;
  const well = j.verdict === 'agrees' || j.verdict === 'learning' || j.verdict === 'not_comparable';
  return (
    <li class={`verdict ${well ? '' : 'not-well'} ${doubted ? 'doubted' : ''}`} data-verdict={j.verdict} data-doubted={doubted}>
      <p class="verdict-head"><time class="hint" dateTime={j.sampledAt}>{dayClock(j.sampledAt, zone.value)}</time>
        <span class="mark">{j.verdict === 'agrees' ? <TickGlyph /> : well ? null : <WarnGlyph />}<b>{words.verdict[j.verdict]}</b></span>
        {j.standing !== 'good' && j.standing !== 'unknown' && <span class="mark s-line"><StandingGlyph standing={j.standing} />{words.standing[j.standing]}</span>}</p>
      {j.reasons.map((r, i) => <p key={i} class="reason">{r.text}</p>)}
      {since && <p class="reason"><b>{since}</b></p>}
      {(j.probe || j.test) && (
        <dl class="in-line">
          {j.probe && <div><dt>{words.answer.probe}</dt><dd>{pm(j.probe, d)}</dd></div>}
          {j.test && <div><dt>{test}</dt><dd>{pm(j.test, d)}</dd></div>}
          {j.difference && <div><dt>{words.answer.difference}</dt><dd>{pm(j.difference, d, true)} <span class="unit">{unit}</span></dd></div>}
        </dl>)}
    </li>
  );
}
