import { locale } from '../format/language';
import type { ProbeInfo } from '../contract';
import type { ProbeHistory } from '../contract.probe';
import { daysAMonth, fixed, signed, unitText } from '../format/number';
import { zone } from '../live/store';
import { serverNow } from '../live/clock';
import { words } from '../words';

const dayOf = (iso: string) => new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric', timeZone: zone.value }).format(new Date(iso));

/** What the chart says, in words: where it stands, how it moves, when the limit is reached. */
export function BiasWords({ probe, history }: { probe: ProbeInfo; history: ProbeHistory }) {
  const { ahead, limits } = history, d = probe.decimals;
  const now = ahead?.points[0];
  if (!ahead || !limits || !now) return null;
  const unit = unitText(probe.unit) ? `\u00a0${unitText(probe.unit)}` : '';
  const limit = `${fixed(limits.maintenanceAt, d)}${unit}`;
  const reached = ahead.likely !== null && Date.parse(ahead.likely) <= serverNow() + 60_000;
  const says = [words.probePage.bias.nowIs(signed(now.value, d), fixed(now.u, d), unit)];
  if (ahead.drift) says.push(words.probePage.bias.driftIs(signed(ahead.drift.value * daysAMonth, d), fixed(ahead.drift.u * daysAMonth, d), unit));
  if (reached) says.push(words.probePage.bias.reached(limit));
  else {
    if (ahead.earliest) says.push(Date.parse(ahead.earliest) < serverNow() + 86_400_000 ? words.probePage.bias.perhaps(limit) : words.probePage.bias.earliest(limit, dayOf(ahead.earliest)));
    if (ahead.likely) says.push(words.probePage.bias.likely(dayOf(ahead.likely), ahead.latest && dayOf(ahead.latest)));
    says.push(ahead.why.text + '.');
  }
  return <p data-testid="forecast">{says.join(' ')}</p>;
}
