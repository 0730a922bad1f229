import { useLayoutEffect, useState } from 'preact/hooks';
import type { AlarmView } from '../contract';
import { allPumps } from '../live/store';
import { useComeAndGo } from '../parts/useComeAndGo';
import { link } from '../router';
import { words } from '../words';
import { AcknowledgeForm, ShelveForm } from './AlarmForms';
import { MakeSafeForm } from './MakeSafeForm';
import { isAside } from './order';
import { ReturnForm, TakeOutForm } from './ServiceForms';
import { SilenceButton } from './SilenceButton';

type Act = 'acknowledge' | 'safe' | 'reset' | 'shelve' | 'unshelve' | 'take-out' | 'return';

/** What a person may do with an alarm as it stands; the server has the last word. */
function allowed(a: AlarmView, page: boolean): Act[] {
  const shelved = a.state === 'shelved', out = a.state === 'out_of_service', shelvable = a.shelvable ?? a.priority !== 'critical';
  const unsafe = a.mustBeMadeSafe === true && a.latchHeld === true && !a.madeSafe;
  const acts: [Act, boolean][] = [
    ['acknowledge', !a.acknowledged && !shelved && !out],
    ['safe', unsafe],
    ['reset', a.latchHeld === true && !a.active && a.acknowledged && !unsafe],
    ['unshelve', shelved],
    ['shelve', a.active && !isAside(a) && shelvable],
    ['return', out],
    ['take-out', page && a.mayLeaveService],
  ];
  return acts.filter(([, may]) => may).map(([act]) => act);
}

const said: Record<Act, string> = {
  acknowledge: words.alarms.acknowledge, safe: words.makeSafe.open, reset: words.alarms.reset, shelve: words.alarms.shelve, unshelve: words.alarms.unshelve,
  'take-out': words.rulesPage.take, return: words.rulesPage.giveBack,
};
const testId: Record<Act, string> = { acknowledge: 'ack', safe: 'make-safe', reset: 'reset', shelve: 'shelve', unshelve: 'unshelve', 'take-out': 'open-take-out', return: 'open-return' };

const chemical = ['R-043', 'R-044', 'R-045'];

/** The way to what the alarm asks for: a test by hand, the stock book, or a note on the thing that failed. */
function Next({ alarm }: { alarm: AlarmView }) {
  if (alarm.rule === 'R-070') return <a class="button quiet" href={alarm.poolId ? link('exceptions', alarm.poolId) : link('exceptions')}>{words.exceptions.title}</a>;
  if (chemical.includes(alarm.rule)) return <a class="button quiet" href={link('chemicals')}>{words.chemicals.title}</a>;
  if (allPumps.value.has(alarm.subject)) return <a class="button quiet" href={link('pumps', alarm.subject)}>{words.pumps.write}</a>;
  return alarm.poolId ? <a class="button quiet" href={link('check', alarm.poolId)}>{words.overview.check}</a> : null;
}

function Form({ act, alarm, onDone }: { act: Act; alarm: AlarmView; onDone: () => void }) {
  if (act === 'shelve') return <ShelveForm alarm={alarm} onDone={onDone} />;
  if (act === 'safe') return <MakeSafeForm alarm={alarm} onDone={onDone} />;
  if (act === 'take-out') return <TakeOutForm rule={alarm.rule} subject={alarm.subject} subjects={[]} onDone={onDone} />;
  if (act === 'return') return <ReturnForm rule={alarm.rule} subject={alarm.subject} onDone={onDone} />;
  return <AcknowledgeForm alarm={alarm} verb={act} onDone={onDone} />;
}

/** The alarm that somebody has just done something with: what was done may move its row to another list, and the focus goes with it. */
const acted = { id: '', at: 0 };
const settles = 5_000;

/** The forms for what may be done with an alarm now. On its own page there is more room. */
export function AlarmActions({ alarm, page = false, onDone }: { alarm: AlarmView; page?: boolean; onDone?: () => void }) {
  const [open, setOpen] = useState<Act | null>(null);
  const { host, onKeyDown } = useComeAndGo(open, () => setOpen(null));
  const done = () => { acted.id = alarm.id; acted.at = performance.now(); setOpen(null); onDone?.(); };
  // The button that opened the form goes with what it did, and the whole row may stand elsewhere now.
  useLayoutEffect(() => {
    if (acted.id !== alarm.id || document.activeElement !== document.body) return;
    acted.id = '';
    if (performance.now() - acted.at < settles) host.current?.focus({ preventScroll: true });
  });
  return <div ref={host} tabIndex={-1} class="alarm-acts" role="group" aria-label={alarm.title} onKeyDown={onKeyDown}>{open !== null ? <Form act={open} alarm={alarm} onDone={done} /> : (
    <div class="inline">
      {allowed(alarm, page).map(act => <button type="button" key={act} data-opens={act} class={act === 'shelve' || act === 'take-out' ? 'quiet-button' : ''} data-testid={testId[act]} onClick={() => setOpen(act)}>{said[act]}</button>)}
      <SilenceButton alarm={alarm} />
      <Next alarm={alarm} />
    </div>)}</div>;
}
