import type { ProbeInfo } from '../contract';
import type { OrpView } from '../contract.orp';
import { fixed, signed } from '../format/number';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

/** What an ORP may say, for whoever asks: the slopes of theory, the reading against other electrodes, and why no mg/L comes of it. */
export function OrpSheet({ probe }: { probe: ProbeInfo }) {
  const { data } = usePolled<OrpView>(`/probes/${encodeURIComponent(probe.id)}/orp`, 60_000);
  if (!data) return null;
  return (
    <section class="sheet card later" data-testid="orp-sheet">
      <h2>{words.orp.title}</h2>
      <p class="hint">{words.orp.byTheory(fixed(data.temperatureC, 1), data.temperatureIsAssumed)}</p>
      <table class="lines"><tbody>
        <tr><th scope="row">{words.orp.perPh}</th><td class="n">{signed(data.perPh, 1)} <span class="unit">mV</span></td></tr>
        <tr><th scope="row">{words.orp.perDoubling}</th><td class="n">{signed(data.perDoubling, 1)} <span class="unit">mV</span></td></tr>
      </tbody></table>
      {data.against.length > 0 && (
        <details><summary>{words.orp.against}</summary>
          <table class="lines"><tbody>{data.against.map(a => (
            <tr key={a.electrode}><th scope="row">{words.orp.electrodes[a.electrode]}{a.fromMemory && <span class="hint block">{words.orp.fromMemory}</span>}</th>
              <td class="n">{fixed(a.millivolts, 0)} <span class="unit">{`\u00b1\u00a0${fixed(a.u, 0)}`} mV</span></td></tr>))}</tbody></table>
        </details>)}
      <ul class="plain">{data.sayings.map(s => <li key={s.code}>{s.text}</li>)}</ul>
    </section>
  );
}
