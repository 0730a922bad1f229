import type { WithU } from '../contract';
import type { SideView, TrustStoryView } from '../contract.trust';
import { fixed } from '../format/number';
import { allProbes } from '../live/store';
import { link } from '../router';
import { words } from '../words';

const pm = (x: WithU | null, d: number) => (x ? `${fixed(x.value, d)} \u00b1 ${fixed(x.u, d)}` : '\u2013');

function Side({ side }: { side: SideView }) {
  const probe = allProbes.value.get(side.probeId);
  const d = probe?.decimals ?? 2;
  return (
    <li data-testid={`side-${side.probeId}`}>
      <a href={link('probe', side.probeId)}>{probe?.name ?? side.probeId}</a>
      {side.panelDiffers && <b class="block">{'\u25b2'} {words.trust.panelDiffers}</b>}
      <dl class="trio">
        <div><dt>{words.trust.panel}</dt><dd>{fixed(side.panel, d)}</dd></div>
        <div><dt>{words.trust.received}</dt><dd>{fixed(side.received?.value, d)}</dd></div>
        <div><dt>{probe?.measurand === 'orp' ? words.trust.expected : words.trust.test}</dt><dd>{pm(side.test, d)}</dd></div>
        {probe?.measurand !== 'orp' && <div><dt>{words.trust.believed}</dt><dd>{pm(side.believed, d)}</dd></div>}
      </dl>
    </li>
  );
}

/** Panel, received value, test and what is believed, side by side as they were at the sample. */
export function Sides({ story }: { story: TrustStoryView }) {
  const sides = story.sides.filter(s => s.received || s.panel !== null);
  if (sides.length === 0) return null;
  return <><h3>{words.trust.sides}</h3><ul class="sides">{sides.map(s => <Side key={s.probeId} side={s} />)}</ul></>;
}
