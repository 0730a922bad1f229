import { useState } from 'preact/hooks';
import { span } from '../format/age';
import { now } from '../live/clock';
import { list } from '../overview/DueLine';
import { Remark } from '../parts/Field';
import { words } from '../words';
import { sampledAgain, tooOld, type Round } from './round';
import { saveStop } from './send';
import { setRound, stopOf } from './store';

const w = words.round;

/** After an interruption: the sample stood too long for what is still to be tested. */
export function OldSample({ round }: { round: Round }) {
  const stop = stopOf(round), old = tooOld(stop, now.value);
  const [error, setError] = useState<string | undefined>();
  if (old.length === 0 || stop.draft.whenExact === null) return null;
  const fresh = async () => {
    const { done, again } = sampledAgain(stop);
    if (done) {
      const saved = await saveStop(done, round.who);
      if ('errors' in saved) return setError(Object.values(saved.errors).join(' '));
      setRound({ ...round, stops: [...round.stops.slice(0, round.at), { ...done, checkId: saved.id }, again, ...round.stops.slice(round.at + 1)], at: round.at + 1, screen: 'sample', mending: false });
    } else setRound({ ...round, stops: round.stops.map((s, i) => (i === round.at ? again : s)), screen: 'sample', mending: false });
    scrollTo(0, 0);
  };
  return (
    <div class="notice" role="alert" data-testid="old-sample"><p><b>{w.old(span(now.value - stop.draft.whenExact))}</b> {w.oldFor(list(old))}</p>
      <button type="button" data-testid="fresh-sample" onClick={() => void fresh()}>{w.fresh}</button><Remark name="fresh" text={error} /></div>
  );
}
