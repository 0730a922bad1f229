import { dayClock } from '../../format/zone';
import { now } from '../../live/clock';
import { zone } from '../../live/store';
import { Age } from '../../parts/Age';
import { TickGlyph, WarnGlyph } from '../../parts/Glyph';
import { link } from '../../router';
import { calm, useTrust } from '../../trust/TrustStory';
import { words } from '../../words';
import { OfPools } from './OfPools';
import type { TileProps } from './props';

/** Which to believe, in a sentence, and the next step. */
function Story({ poolId }: { poolId: string }) {
  const story = useTrust(poolId);
  if (!story) return <p class="hint">{words.loading}</p>;
  const step = story.steps[0]?.what[0], late = story.testBy !== null && Date.parse(story.testBy) < now.value;
  return (
    <>
      <p class="mark story-answer">{calm(story) ? <TickGlyph /> : <WarnGlyph />}<b>{story.says[0]?.text}</b></p>
      <p class="hint">{story.sampledAt ? <>{words.trust.byCheck} {dayClock(story.sampledAt, zone.value)}, <Age at={story.sampledAt} /></> : words.trust.noCheck}</p>
      {story.testBy && <p class={`notice${late ? ' bad' : ''}`}><b>{(late ? words.trust.testLate : words.trust.testBy)(dayClock(story.testBy, zone.value))}</b></p>}
      {step && <p><span class="label">{words.trust.next}:</span> {step.text}</p>}
    </>
  );
}

export const TrustTile = (p: TileProps) => <OfPools p={p} href={id => link('pool', id)}>{pool => <Story poolId={pool.id} />}</OfPools>;
