// Labels of the time axis on the site's clock, in 24 hours.

import { locale } from '../format/language';

const parts = (zone: string, o: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, { ...o, timeZone: zone, hourCycle: 'h23' });

/** A label maker for a zone: the finer the step, the more of the clock; a new day shows its date. */
export function tickLabels(zone: string): (splits: number[], step: number) => string[] {
  const seconds = parts(zone, { hour: '2-digit', minute: '2-digit', second: '2-digit' });
  const minutes = parts(zone, { hour: '2-digit', minute: '2-digit' });
  const days = parts(zone, { day: 'numeric', month: 'short' });
  const months = parts(zone, { month: 'short', year: '2-digit' });
  return (splits, step) => splits.map(t => {
    if (step >= 27 * 86_400_000) return months.format(t);
    if (step >= 86_400_000) return days.format(t);
    const clock = (step < 60_000 ? seconds : minutes).format(t);
    return clock === '00:00' || clock === '00:00:00' ? days.format(t) : clock;
  });
}
