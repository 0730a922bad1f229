import { span } from '../format/age';
import { clock, clockSeconds, dayClock, toField } from '../format/zone';
import { now } from '../live/clock';
import { life } from '../live/connection';
import { isDead } from '../live/dead';
import { asHeard } from '../live/heard';
import { circuits, health, zone } from '../live/store';
import { words } from '../words';

/** Says plainly when what stands on the page is not live. Nothing while it is. */
export function NotLive() {
  const { state, since } = life.value;
  const first = circuits.value.size === 0;
  // Not at once: a page that has just been opened and will be live in a moment would jump.
  if (!isDead()) return <PlantFile />;
  if (asHeard.value !== null) return <AsHeard at={asHeard.value} />;
  return (
    <div class="not-live" data-testid="not-live">
      {/* The age counts by the second and so stands outside of what is read aloud. */}
      <span role="alert"><b>{words.live.banner}</b> {first && state === 'connecting' ? words.live.first : `${words.live.since(clockSeconds(since, zone.value))} ${words.live.values}`}</span>
      {' '}<span aria-hidden="true" class="not-live-age">{words.live.silentFor(span(now.value - since))}</span>
    </div>
  );
}

/** What stands here was kept on the device: said as soon as the server has been waited for. The bar says it from the first picture on. */
function AsHeard({ at }: { at: number }) {
  const today = toField(at, zone.value).slice(0, 10) === toField(now.value, zone.value).slice(0, 10);
  const when = (today ? clock : dayClock)(at, zone.value);
  return <div class="not-live" data-testid="not-live"><span role="alert"><b>{words.live.banner}</b> {words.offline.asHeard(when)} {words.offline.asHeardMore}</span></div>;
}

function PlantFile() {
  const errors = health.value?.plantFile ?? [];
  if (errors.length === 0) return null;
  return <div class="plant-file" role="alert" data-testid="plant-file"><b>{words.live.plantFile}</b> <span class="pre">{errors.join('\n')}</span></div>;
}
