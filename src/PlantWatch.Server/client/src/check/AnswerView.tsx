import type { CheckAnswer, CombinedView, JudgementView, WithU } from '../contract';
import { fixed, signed, unitText } from '../format/number';
import { allProbes } from '../live/store';
import type { CheckOutcome } from '../outbox/checks';
import { StandingGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { TrustStory } from '../trust/TrustStory';
import { words } from '../words';
import { fieldOf } from './build';
import { nameOfField } from './fields';
import { PoolNow } from './PoolNow';

const pm = (x: WithU | null, d: number, sign = false) => (x ? `${sign ? signed(x.value, d) : fixed(x.value, d)} \u00b1 ${fixed(x.u, d)}` : '\u2013');

function Combined({ c, inDoubt }: { c: CombinedView; inDoubt: boolean }) {
  return <p>{words.check.combined}: {c.value !== null && <b>{pm({ value: c.value, u: c.u }, 2)} mg/L</b>}{c.remark && ` ${c.remark.text}`}{inDoubt && c.value !== null && `, ${words.answer.inDoubt}`}</p>;
}

/** What one check says of one probe. */
export function JudgementCard({ j, when, panel, testId = true }: { j: JudgementView; when?: string; panel?: number | undefined; testId?: boolean }) {
  const probe = allProbes.value.get(j.probeId);
  const d = probe?.decimals ?? 2;
  const unit = unitText(probe?.unit ?? '');
  // What the probe says of the water once its bias is taken off.
  const believed = j.probe && j.bias ? { value: j.probe.value - j.bias.value, u: j.bias.u } : null;
  // Nobody tests ORP by hand: beside it stands what the pool's own line expects from the chlorine test.
  const test = j.measurand === 'orp' ? words.answer.expected : words.answer.test;
  return (
    <li class={`judgement v-${j.verdict}`} data-testid={testId ? `judged-${j.probeId}` : undefined} data-verdict={j.verdict}>
      {when && <p class="hint">{when}</p>}
      <div class="judgement-head"><a href={link('probe', j.probeId)}>{probe?.name ?? j.probeId}</a>
        <span class="mark">{j.verdict === 'agrees' ? <TickGlyph /> : j.verdict === 'learning' ? null : <WarnGlyph />}<b>{words.verdict[j.verdict]}</b></span></div>
      {j.reasons.map((r, i) => <p key={i} class="reason">{r.text}</p>)}
      {(j.probe || j.test) && (
        <dl class="trio">
          {panel !== undefined && <div><dt>{words.answer.panel}</dt><dd>{fixed(panel, d)}</dd></div>}
          <div><dt>{words.answer.probe}</dt><dd>{pm(j.probe, d)}</dd></div>
          <div><dt>{test}</dt><dd>{pm(j.test, d)}</dd></div>
          <div><dt>{words.answer.difference}</dt><dd>{pm(j.difference, d, true)} <span class="unit">{unit}</span></dd></div>
          {j.measurand !== 'orp' && believed && <div class="believed"><dt>{words.answer.believed}</dt><dd>{pm(believed, d)}</dd></div>}
        </dl>)}
      <p class="mark s-line"><StandingGlyph standing={j.standing} />{words.standing[j.standing]}</p>
    </li>
  );
}

function Answered({ answer }: { answer: CheckAnswer }) {
  return (
    <>
      <h2 class="mark good"><TickGlyph />{words.answer.saved}</h2>
      <PoolNow poolId={answer.check.poolId} />
      {answer.combined && <Combined c={answer.combined} inDoubt={answer.remarks.some(r => fieldOf(r.field, answer.check).endsWith('_chlorine'))} />}
      {answer.remarks.length > 0 && (
        <div class="notice"><b>{words.answer.remarks}</b>
          <ul>{answer.remarks.map((r, i) => <li key={i} data-testid={`remark-${fieldOf(r.field, answer.check)}`}>{label(r.field, answer)}{r.text}</li>)}</ul></div>)}
      <TrustStory poolId={answer.check.poolId} checkId={answer.check.id} />
      {answer.judgements.length === 0 ? <p>{words.answer.noProbes}</p> : <ul class="judgements">{answer.judgements.map(j => <JudgementCard key={j.probeId} j={j} panel={answer.check.panel.find(p => p.probeId === j.probeId)?.value} />)}</ul>}
    </>
  );
}

function label(path: string, answer: CheckAnswer): string {
  const name = nameOfField(fieldOf(path, answer.check));
  return name ? name + ': ' : '';
}

/** What became of the check that was just entered. */
export function AnswerView({ outcome, onAnother }: { outcome: CheckOutcome | undefined; onAnother?: () => void }) {
  return (
    <section class="sheet answer" role="status" data-testid="check-answer" data-outcome={outcome?.kind ?? 'sending'}>
      {outcome === undefined && <h2>{words.check.sending}</h2>}
      {outcome?.kind === 'unreachable' && <><h2 class="mark"><WarnGlyph />{words.answer.queued}</h2><p>{words.answer.queuedMore}</p><p><b>{words.answer.notJudged}</b></p></>}
      {outcome?.kind === 'answered' && <Answered answer={outcome.answer} />}
      {onAnother && <button type="button" class="primary" onClick={onAnother} data-testid="another-check">{words.check.another}</button>}
    </section>
  );
}
