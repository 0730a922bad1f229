import type { CheckAnswer, ProbeInfo } from '../contract';
import { fixed, signed, unitText } from '../format/number';
import { probeViews, reading } from '../live/store';
import { Age } from '../parts/Age';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';

/** What a probe reads, what the panel showed, what the last test said and what is believed, side by side. */
function Row({ probe, checks }: { probe: ProbeInfo; checks: CheckAnswer[] }) {
  const view = probeViews.value.get(probe.id);
  const point = reading(probe.id).value;
  const d = probe.decimals;
  const panelCheck = checks.find(c => c.check.panel.some(p => p.probeId === probe.id));
  const panel = panelCheck?.check.panel.find(p => p.probeId === probe.id);
  const judged = checks.flatMap(c => c.judgements).find(j => j.probeId === probe.id && j.test);
  const test = judged?.test;
  return (
    <li class="probe-line" data-testid={`probe-${probe.id}`}>
      <div class="probe-line-head">
        <a href={link('probe', probe.id)}><b>{probe.name}</b></a> <StandingMark probeId={probe.id} long testId={false} />
        <span class="hint">{words.poolPage.origin[probe.origin]}{probe.poolId === null && `, ${words.poolPage.common}`}</span>
      </div>
      {view?.reasons.map((r, i) => <p key={i} class="reason">{r.text}</p>)}
      {probe.measurand !== 'sample_flow' && (
        <dl class="side-by-side">
          <div><dt>{words.poolPage.reads}</dt><dd>{fixed(point?.v, d)}</dd></div>
          <div><dt>{words.poolPage.panel}</dt><dd>{fixed(panel?.value, d)}{panel && <Age at={panelCheck?.check.sampledAt} />}</dd></div>
          <div><dt>{probe.measurand === 'orp' ? words.poolPage.expectedColumn : words.poolPage.testColumn}</dt><dd>{test ? `${fixed(test.value, d)} \u00b1 ${fixed(test.u, d)}` : '\u2013'}{judged && <Age at={judged.sampledAt} />}</dd></div>
          {probe.measurand !== 'orp' && <div class="believed"><dt>{words.poolPage.believed}</dt><dd>{view?.believed ? `${fixed(view.believed.value, d)} \u00b1 ${fixed(view.believed.u, d)}` : '\u2013'}</dd></div>}
          <div><dt>{words.poolPage.bias}</dt><dd>{view?.bias ? `${signed(view.bias.value, d)} \u00b1 ${fixed(view.bias.u, d)}` : '\u2013'} <span class="unit">{unitText(probe.unit)}</span></dd></div>
        </dl>)}
    </li>
  );
}

export function ProbeTable({ probes, checks }: { probes: ProbeInfo[]; checks: CheckAnswer[] }) {
  return (
    <section class="sheet card">
      <h2>{words.poolPage.probes}</h2>
      {probes.length === 0 ? <p class="hint">{words.poolPage.noProbes}</p> : <ul class="probe-lines">{probes.map(p => <Row key={p.id} probe={p} checks={checks} />)}</ul>}
    </section>
  );
}
