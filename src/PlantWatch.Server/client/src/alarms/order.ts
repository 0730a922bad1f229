import type { AlarmState, AlarmView } from '../contract';
import { rankOf } from './priorities';

const quiet: AlarmState[] = ['shelved', 'suppressed_by_design', 'out_of_service'];
/** Set aside by a person or by design: it asks for nothing now. */
export const isAside = (a: AlarmView) => quiet.includes(a.state);
/** Alarms that ask for something: not normal, shelved, suppressed or out of service. */
export const standingAlarms = (all: AlarmView[]) => all.filter(a => a.state !== 'normal' && !isAside(a));
const band = (a: AlarmView) => (isAside(a) ? 2 : a.acknowledged ? 1 : 0);

/** What nobody has seen first, then by priority, then the newest. What is set aside stands last. */
export function inOrder(all: AlarmView[]): AlarmView[] {
  return [...all].sort((a, b) => band(a) - band(b) || rankOf(a) - rankOf(b) || (a.raisedAt < b.raisedAt ? 1 : -1));
}

/** An alarm with those that follow from it, first out first. */
export interface Family { cause: AlarmView; follow: AlarmView[] }

/** Only a consequence no worse than its cause goes under its cause: one that is worse, or unseen where its cause was seen, stands by itself. */
const mayFold = (a: AlarmView, cause: AlarmView) => rankOf(a) >= rankOf(cause) && (a.acknowledged || !cause.acknowledged);

export function families(all: AlarmView[]): Family[] {
  const ordered = inOrder(all), byId = new Map(ordered.map(a => [a.id, a]));
  const causeOf = (a: AlarmView) => { const c = a.consequenceOf ? byId.get(a.consequenceOf) : undefined; return c && c !== a && mayFold(a, c) ? c : undefined; };
  // One level only: a consequence of a consequence stands by itself, and so none can be lost in a ring.
  const folded = (a: AlarmView) => { const c = causeOf(a); return c !== undefined && causeOf(c) === undefined; };
  const first = (a: AlarmView, b: AlarmView) => (a.order ?? 0) - (b.order ?? 0) || (a.raisedAt < b.raisedAt ? -1 : 1);
  return ordered.filter(a => !folded(a)).map(cause => ({ cause, follow: ordered.filter(a => folded(a) && causeOf(a) === cause).sort(first) }));
}
