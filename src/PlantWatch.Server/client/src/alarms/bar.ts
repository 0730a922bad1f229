import type { AlarmView, Priority } from '../contract';
import { families, standingAlarms } from './order';
import { priorities, rankOf } from './priorities';

/** What is known of the plant: nothing yet, that it has no pool to watch, or its state. */
export type Known = 'not_yet' | 'no_plant' | 'known';

/** What the bar has to say. Without a live connection nothing it says is good news, whatever was heard last. */
export interface BarSays {
  kind: 'unknown' | 'nothing' | 'none' | 'blind' | 'alarms';
  dead: boolean;
  /** What stands by itself, by priority; what follows from another alarm is not counted again. */
  counts: { priority: Priority; n: number }[];
  /** The alarm that is named: the gravest that calls somebody, else the gravest that nobody has seen. */
  shown: AlarmView | null;
  /** It calls somebody now. */
  calls: boolean;
  outOfService: number;
}

const since = (a: AlarmView) => a.annunciatedAt ?? a.raisedAt;
const gravest = (all: AlarmView[]) => [...all].sort((a, b) => rankOf(a) - rankOf(b) || (since(a) < since(b) ? 1 : -1))[0] ?? null;

export function barOf(all: AlarmView[], known: Known, dead: boolean, blindPools: number): BarSays {
  const standing = standingAlarms(all);
  const apart = families(standing).map(f => f.cause);
  const calling = gravest(standing.filter(a => a.annunciates));
  return {
    kind: known === 'not_yet' ? 'unknown' : standing.length > 0 ? 'alarms' : known === 'no_plant' ? 'nothing' : blindPools > 0 ? 'blind' : 'none', dead,
    counts: priorities.map(priority => ({ priority, n: apart.filter(a => a.priority === priority).length })).filter(c => c.n > 0),
    shown: calling ?? gravest(standing.filter(a => !a.acknowledged)), calls: calling !== null,
    outOfService: all.filter(a => a.state === 'out_of_service').length,
  };
}
