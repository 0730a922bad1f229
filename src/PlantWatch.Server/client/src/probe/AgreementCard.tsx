import { useEffect, useState } from 'preact/hooks';
import { query } from '../api/http';
import type { ProbeInfo } from '../contract';
import type { ProbeHistory } from '../contract.probe';
import { fixed, signed, unitText } from '../format/number';
import { onLive } from '../live/connection';
import { paint, theme } from '../parts/theme';
import { words } from '../words';

const dark = () => theme.value === 'dark' || (theme.value === 'auto' && matchMedia('(prefers-color-scheme: dark)').matches);

/** One picture of the server with its words; where it cannot be fetched the words stay. */
function Picture({ probe, kind, title, alt, fresh }: { probe: ProbeInfo; kind: 'agreement' | 'regression'; title: string; alt: string; fresh: string }) {
  const [failed, fail] = useState(false);
  paint.value;
  const base = `/api/v1/charts/probes/${encodeURIComponent(probe.id)}/${kind}`;
  const src = base + '.svg' + query({ width: 440, theme: dark() ? 'dark' : 'light', v: fresh });
  useEffect(() => { fail(false); return onLive(() => fail(false)); }, [src]);
  return (
    <figure class="pair-picture">
      {failed ? <p class="hint">{title}: {words.probePage.agreement.failed}</p> : <img src={src} alt={`${title}. ${alt}`} loading="lazy" decoding="async" width="440" onError={() => fail(true)} />}
      <figcaption class="hint">{title} (<a href={base + '.png' + query({ width: 1200 })} target="_blank" rel="noopener">PNG</a>)</figcaption>
    </figure>
  );
}

/** How far probe and tests agree, as figures first and as pictures after. */
export function AgreementCard({ probe, history }: { probe: ProbeInfo; history: ProbeHistory }) {
  const a = history.agreement, d = Math.max(probe.decimals, 1);
  const unit = unitText(probe.unit) ? `\u00a0${unitText(probe.unit)}` : '';
  if (!a) return history.judgements.length === 0 ? null : <section class="sheet card later" data-testid="agreement"><h2>{words.probePage.agreement.title}</h2><p class="hint">{words.probePage.agreement.few}</p></section>;
  const says = words.probePage.agreement.says(a.count, signed(a.bias, d), signed(a.low, d), signed(a.high, d), unit);
  const fresh = `${a.count}-${fixed(a.bias, 4)}`;
  return (
    <section class="sheet card later" data-testid="agreement">
      <h2>{words.probePage.agreement.title}</h2>
      <p>{says}</p>
      {probe.measurand !== 'orp' && <p class="hint">{words.probePage.agreement.together}</p>}
      <div class="pair-pictures">
        <Picture probe={probe} kind="agreement" title={words.probePage.agreement.difference} alt={says} fresh={fresh} />
        <Picture probe={probe} kind="regression" title={words.probePage.agreement.regression} alt={says} fresh={fresh} />
      </div>
    </section>
  );
}
