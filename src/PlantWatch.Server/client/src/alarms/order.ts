import type { AlarmState, AlarmView } from '../contract';
import { priorities } from '../parts/AlarmBar';

const quiet: AlarmState[] = ['shelved', 'suppressed_by_design', 'out_of_service'];
const band = (a: AlarmView) => (quiet.includes(a.state) ? 2 : a.acknowledged ? 1 : 0);

/** What nobody has seen first, then by priority, then the newest. What is set aside stands last. */
export function inOrder(all: AlarmView[]): AlarmView[] {
  return [...all].sort((a, b) => band(a) - band(b) || priorities.indexOf(a.priority) - priorities.indexOf(b.priority) || (a.raisedAt < b.raisedAt ? 1 : -1));
}
