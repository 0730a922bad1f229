import { clock, dayOnly } from '../../format/zone';
import { now } from '../../live/clock';
import { zone } from '../../live/store';

/** The time at the site, by the server's clock. */
export const ClockTile = () => <p class="wall-clock"><time>{clock(now.value, zone.value)}</time> <span class="hint">{dayOnly(now.value, zone.value)}</span></p>;
