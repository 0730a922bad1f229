import type { JobState } from '../../contract.words';

// Jobs of maintenance: what is to be done, who is on it, whether it helped.

const state: Record<JobState, string> = { open: 'Open', in_hand: 'In hand', waiting_for_parts: 'Waiting for parts', done: 'Done' };

export const jobs = {
  title: 'Jobs', lead: 'What is broken, who is on it, and whether the repair helped. That last the pumps and probes say themselves, within a day.', state,
  failed: 'Repairs that did not help', open: 'Open', in_hand: 'In hand', waiting_for_parts: 'Waiting for parts', watched: 'Done, its effect is being watched', over: 'Over',
  none: 'No job here.', nothing: 'Nothing is broken that anybody wrote down.', newJob: 'New job', carryOn: 'Carry on', again: 'Take it up again', asset: 'What it is on', alarm: 'Answers the alarm', noAlarm: 'none',
  seen: 'What was seen', done: 'What was done', stateLabel: 'State', save: 'Save the job', needAsset: 'Choose what it is on.', needSeen: 'Say what was seen.', needDone: 'Say what was done.',
  linked: 'answers an alarm', minutes: 'Minutes at work, all together', needMinutes: 'Whole minutes, 0 to 10,080.', parts: 'Parts fitted', part: 'Part', count: 'How many', number: 'Its number', addPart: 'Add a part', dropPart: 'Remove', needPart: 'Name the part and say how many, 1 to 10,000.',
  parted: (n: number, name: string) => `${n} \u00d7 ${name}`, worked: (m: number) => `${m} min at work`, judgedBy: 'judged by', since: (who: string) => `first written by ${who}`, watching: 'The signals are being watched; a day of quiet proves it.',
  draft: 'Draft kept on this device; pictures once they have arrived.', unkept: 'This device has no room to keep the draft: save it before you leave this page.', unsaved: 'Written and not saved', goOn: 'Go on writing',
  pictures: 'Pictures', addPicture: 'Take or pick a picture', dropPicture: 'Leave out', pictureOf: 'Picture of this job', pictureNo: (n: number, of: string) => `Picture ${n} of: ${of}`, pictureHint: 'Of the fault and of the repair; no people. It is made small here, and the place it was taken at is not sent.',
  pictureRefused: 'The server did not take this picture.', going: 'on its way', waits: 'waits for the server; goes out by itself while this form is open', notRead: (name: string) => `${name}: cannot be read as a picture`, needPictures: 'A picture has not arrived: wait for it, or leave it out.',
  kit: 'Reagents, buffers and solutions', toKit: 'To the lots', replaceBy: (at: string) => `to be replaced by ${at}`, noLot: 'no lot noted', orderNow: 'Within two weeks: order another.',
  planned: 'Planned work', noPlanned: 'The plant file plans no work.', every: (d: string) => `every ${d} days`, due: 'due', overdue: 'overdue', last: 'last done', neverDone: 'never done here', writeDown: 'Write it down', planOf: 'planned',
  often: 'How often things failed', thing: 'Thing', failures: 'Failures', mean: 'Mean time between, days', between: '90 % of the time between', repair: 'Mean time to repair, h', offender: 'fails again and again', atLeast: (d: string) => `at least ${d}`,
  oftenNote: 'Of the last year, from the jobs written here; planned work is not counted. The mean is time in service by failures, its interval that of a count of rare events: few failures say little.',
  assets: { circuits: 'Circuit', pools: 'Pool', probes: 'Probe', pumps: 'Pump', filters: 'Filter' },
};
