import { span } from '../format/age';
import { clockSeconds } from '../format/zone';
import { now } from '../live/clock';
import { life } from '../live/connection';
import { circuits, health, zone } from '../live/store';
import { words } from '../words';

/** Says plainly when what stands on the page is not live. Nothing while it is. */
export function NotLive() {
  const { state, since } = life.value;
  const first = circuits.value.size === 0;
  // A page that has just been opened is connecting, not dead: it gets three seconds.
  if (state === 'live' || (state === 'connecting' && now.value - since < 3_000)) return <PlantFile />;
  return (
    <div class="not-live" role="alert" data-testid="not-live">
      <b>{words.live.banner}</b> {first && state === 'connecting' ? words.live.first
        : words.live.since(clockSeconds(since, zone.value), span(now.value - since))} {!first && words.live.values}
    </div>
  );
}

function PlantFile() {
  const errors = health.value?.plantFile ?? [];
  if (errors.length === 0) return null;
  return <div class="plant-file" role="alert" data-testid="plant-file"><b>{words.live.plantFile}</b> <span class="pre">{errors.join('\n')}</span></div>;
}
