import { limitsOfPool } from '../live/store';
import { besideLimit, beyond, limitOf } from '../parts/beyond';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { combinedOf, type Stop } from './round';

/** Combined chlorine of the round's own sample. */
export function CombinedLine({ stop }: { stop: Stop }) {
  const c = combinedOf(stop);
  if (c.kind === 'missing') return null;
  const limit = limitOf(limitsOfPool(stop.draft.poolId), 'combined_chlorine'), out = c.kind === 'value' ? beyond(c.value, limit) : null;
  return (
    <output class={`combined ${out || c.kind === 'free_above_total' ? 'out' : ''}`} data-testid="round-combined"><span class="label">{words.check.combined}</span>
      {c.kind === 'value' ? <span><b class="figure small">{besideLimit(c.value, limit, 2)}</b> <span class="unit">mg/L</span> {out && <span class="beyond"><WarnGlyph />{out}</span>}</span> : <span class="beyond"><WarnGlyph />{words.check.freeAboveTotal}</span>}
    </output>
  );
}
