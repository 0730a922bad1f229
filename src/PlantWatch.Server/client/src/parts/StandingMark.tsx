import { isDead } from '../live/dead';
import { probeViews } from '../live/store';
import { words } from '../words';
import { StandingGlyph } from './Glyph';

/** Standing of a probe as shape and word; the reason in its title. Without the server it is what was heard last, and no tick. */
export function StandingMark({ probeId, long, testId = true }: { probeId: string; long?: boolean; testId?: boolean }) {
  const view = probeViews.value.get(probeId);
  const standing = view?.standing ?? 'unknown', old = isDead() && standing !== 'unknown';
  const word = (long ? words.standing : words.standingShort)[standing];
  return (
    <span class={`standing s-${standing}`} data-testid={testId ? `standing-${probeId}` : undefined} data-standing={standing} title={view?.reasons.map(r => r.text).join('. ')}>
      <StandingGlyph standing={old && standing === 'good' ? 'unknown' : standing} />{old ? words.live.last(word) : word}
    </span>
  );
}
