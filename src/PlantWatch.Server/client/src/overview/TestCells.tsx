import type { ComponentChildren } from 'preact';
import type { Measurand, PoolInfo, PoolView } from '../contract';
import { decimalsOf, fixed, signed } from '../format/number';
import { Age } from '../parts/Age';
import { limitsOfPool } from '../live/store';
import { besideLimit, beyond, limitOf } from '../parts/beyond';
import { ofBalance } from '../know/balance';
import { ofCombined, ofTest } from '../know/tests';
import { WarnGlyph } from '../parts/Glyph';
import { Know, type Known } from '../parts/Know';
import { words } from '../words';

function Cell({ label, figure, unit, out, tell, testId, children }: { label: string; figure: string; unit?: string; out?: string | null; tell?: (() => Known) | undefined; testId: string; children?: ComponentChildren }) {
  return (
    <div class={`cell ${out ? 'out' : ''}`}>
      <dt>{label}{tell && <Know of={label} tell={tell} testId={testId} />}</dt>
      <dd><span class="figure small">{figure}{unit && <span class="unit"> {unit}</span>}</span>
        {out && <span class="under beyond"><WarnGlyph />{out}</span>}
        <span class="under">{children}</span></dd>
    </div>
  );
}

/** Free and combined chlorine of the last test and the saturation index. */
export function TestCells({ pool, view }: { pool: PoolInfo; view: PoolView }) {
  const of = pool.disinfectant === 'bromine' ? 'bromine' : 'free_chlorine';
  const free = view.manual.find(m => m.measurand === of);
  const sign = free?.censoring === 'below' ? '< ' : free?.censoring === 'above' ? '> ' : '';
  const combined = view.combined;
  const { index, word, claim, missing, inputs } = view.balance;
  const limitFor = (m: Measurand) => limitOf(limitsOfPool(pool.id), m);
  const doubted = inputs.some(i => i.measurand === 'ph' && i.suspect);
  return (
    <dl class="cells">
      <Cell testId={`${pool.id}-${of}`} tell={free && (() => ofTest(free))} label={words.measurand[of]} figure={free ? sign + besideLimit(free.value, limitFor(of), decimalsOf(of)) : '\u2013'} unit={free ? 'mg/L' : ''} out={beyond(free?.value, limitFor(of))}>
        {free ? <>{free.suspect && <b>{words.overview.suspect}, </b>}{words.know.basis.test}, <Age at={free.sampledAt} /></> : words.overview.noTest}
      </Cell>
      {of === 'free_chlorine' && <Cell testId={`${pool.id}-combined_chlorine`} tell={combined ? () => ofCombined(combined) : undefined} label={words.measurand.combined_chlorine} figure={combined ? besideLimit(combined.value, limitFor('combined_chlorine'), 2) : '\u2013'} unit={combined?.value != null ? 'mg/L' : ''} out={beyond(combined?.value, limitFor('combined_chlorine'))}>
        {combined ? <>{combined.remark && <>{combined.remark.text} </>}<Age at={combined.sampledAt} /></> : words.overview.noTest}
      </Cell>}
      <Cell testId={`${pool.id}-balance`} tell={() => ofBalance(view.balance)} label={words.overview.balance} figure={index === null ? '\u2013' : signed(index, 2)} out={word === 'corrosive' || word === 'scale_forming' ? words.balance[word] ?? word : null}>
        {index === null ? missing[0]?.text ?? words.overview.noTest : <>{doubted && <b>{words.overview.suspect}, </b>}{word === 'balanced' && words.balance[word] + ' '}{'\u00b1'}{fixed(claim, 2)}</>}
      </Cell>
    </dl>
  );
}
