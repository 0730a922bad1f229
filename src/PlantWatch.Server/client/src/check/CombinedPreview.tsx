import { combined } from '../format/chlorine';
import { limitsOfPool } from '../live/store';
import { besideLimit, beyond, limitOf } from '../parts/beyond';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { resultOf } from './build';
import { draft } from './draft';

/** Combined chlorine, worked out while typing. */
export function CombinedPreview() {
  const d = draft.value;
  const c = combined(resultOf(d, 'free_chlorine'), resultOf(d, 'total_chlorine'));
  const limit = limitOf(limitsOfPool(d.poolId), 'combined_chlorine'), out = c.kind === 'value' ? beyond(c.value, limit) : null;
  return (
    <output class={`combined ${c.kind !== 'missing' && (out || c.kind === 'free_above_total') ? 'out' : ''}`} data-testid="combined-preview">
      <span class="label">{words.check.combined}</span>
      {c.kind === 'missing' && <span class="hint">{words.check.combinedMissing}</span>}
      {c.kind === 'value' && <span><b class="figure small">{besideLimit(c.value, limit, 2)}</b> <span class="unit">mg/L</span> {out && <span class="beyond"><WarnGlyph />{out}</span>}</span>}
      {c.kind === 'free_above_total' && <span class="beyond"><WarnGlyph />{words.check.freeAboveTotal}</span>}
    </output>
  );
}
