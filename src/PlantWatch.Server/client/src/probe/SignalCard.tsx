import type { ProbeInfo } from '../contract';
import type { SignalView } from '../contract.probe';
import { span } from '../format/age';
import { fixed, signed, unitText } from '../format/number';
import { fullClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { StandingGlyph } from '../parts/Glyph';
import { words } from '../words';

/** What the signal says without any test: the first thing to look at when a probe is doubted. */
export function SignalCard({ probe, signal }: { probe: ProbeInfo; signal: SignalView }) {
  const w = words.probePage.signal, unit = unitText(probe.unit), d = Math.max(probe.decimals, 1);
  const at = (iso: string | null) => iso ? fullClock(iso, zone.value) : w.never;
  return (
    <section class="sheet card later" data-testid="signal" data-standing={signal.standing}>
      <h2>{w.title}</h2>
      <p class="mark"><StandingGlyph standing={signal.standing} />{signal.reasons.length === 0 ? signal.standing === 'unknown' ? w.unknown : w.good : words.standing[signal.standing]}</p>
      {signal.reasons.map(r => <p key={r.code}>{r.text}</p>)}
      {probe.measurand !== 'sample_flow' && (
        <table class="lines"><tbody>
          <tr><th scope="row">{w.response}</th><td class="n">{signal.response ? `${fixed(signal.response.value, 1)} \u00b1 ${fixed(signal.response.u, 1)} ${w.minutes}` : <span class="hint">{w.healthy}</span>}</td></tr>
          <tr><th scope="row">{w.wanders}</th><td class="n">{signal.wanders === null ? <span class="hint">{w.notYet}</span> : <>{fixed(signal.wanders, d + 1)} <span class="unit">{unit}</span></>}</td></tr>
          <tr><th scope="row">{w.spikes}</th><td class="n">{fixed(signal.spikes, signal.spikes < 0.05 ? 0 : 1)}</td></tr>
          {signal.sameSince && now.value - Date.parse(signal.sameSince) > 300_000 && <tr><th scope="row">{w.same}</th><td class="n">{span(now.value - Date.parse(signal.sameSince))}</td></tr>}
          <tr><th scope="row">{w.leapt}</th><td class="n">{signal.leaptAt && signal.leaptBy !== null ? `${signed(signal.leaptBy, d)} ${unit}, ${at(signal.leaptAt)}` : <span class="hint">{w.never}</span>}</td></tr>
          <tr><th scope="row">{w.flow}</th><td class="n">{signal.noFlowAt ? at(signal.noFlowAt) : <span class="hint">{w.never}</span>}</td></tr>
          {Math.abs(signal.lagSeconds) >= 1 && <tr><th scope="row">{w.lag}</th><td class="n">{fixed(signal.lagSeconds, 0)} s</td></tr>}
        </tbody></table>)}
    </section>
  );
}
