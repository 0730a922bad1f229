import { build, type Errors } from '../check/build';
import { span } from '../format/age';
import { uuid7 } from '../format/uuid7';
import { serverNow } from '../live/clock';
import { measures, zone } from '../live/store';
import { checks, flushChecks, outcomes, sendCheck } from '../outbox/checks';
import { words } from '../words';
import { lateBy, type Stop } from './round';

const w = words.round;

/** What was read after its time is told with the check: its figure alone would not say so. */
export function noteOf(stop: Stop): string {
  const late = stop.what.flatMap(m => { const by = stop.draft.rows[m]?.text ? lateBy(stop, m) : null; return by === null ? [] : [w.lateNote(words.measurand[m], span(by))]; });
  return [stop.draft.note.trim(), ...late].filter(Boolean).join(' ');
}

const draftOf = (stop: Stop) => ({ ...stop.draft, note: noteOf(stop), rows: Object.fromEntries(Object.entries(stop.draft.rows).filter(([m]) => stop.what.includes(m as never) && !stop.left.includes(m as never))) });

export const builtOf = (stop: Stop, who: string) => build(draftOf(stop), who, zone.value, serverNow(), measures);

// A sample that was sent and not answered for is sent again as the same check: the server keeps once what comes twice.
const tried = new Map<string, string>();

/** Keeps the check of a stop on the device and sends it. The id of the check, or what stands in the way. */
export async function saveStop(stop: Stop, who: string): Promise<{ id: string } | { errors: Errors }> {
  const { request, errors } = builtOf(stop, who);
  if (Object.keys(errors).length > 0) return { errors };
  const sample = `${request.poolId} ${request.sampledAt}`, id = tried.get(sample) ?? uuid7();
  tried.set(sample, id);
  try {
    checks.put(id, request, Date.now());
    void flushChecks();
    return { id };
  } catch {
    // No room on the device: at once or not at all, and then it stays in the round.
    const direct = await sendCheck(id, request);
    if (direct.kind !== 'answered') return { errors: { form: direct.kind === 'refused' ? direct.problem.title : words.check.storageFull } };
    outcomes.value = new Map(outcomes.value).set(id, direct);
    return { id };
  }
}
