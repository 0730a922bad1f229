import { beforeEach, describe, expect, it } from 'vitest';
import type { JobView } from '../contract.jobs';
import { beginningOf, isTouched, keep, kept, keyOf, recalled, type Draft, type Kept } from './draft';

const draft: Draft = { asset: 'acid-pump', seen: '', done: '', state: 'open', alarmId: null, taskId: null, parts: [], minutes: '' };
const of = (more: Partial<Kept> = {}): Kept => ({ id: 'j1', after: null, carriesOn: false, task: null, draft: { ...draft, seen: 'drips' }, pictures: [], ...more });
const job = { id: 'j1', asset: 'acid-pump' } as JobView;

describe('a job that was not saved', () => {
  beforeEach(() => { kept.value = {}; });
  it('is touched by what is typed and not by being opened', () => {
    expect(isTouched(draft, [], draft, [])).toBe(false);
    expect(isTouched({ ...draft, seen: ' ' }, [], draft, [])).toBe(false);
    expect(isTouched({ ...draft, seen: 'drips' }, [], draft, [])).toBe(true);
    expect(isTouched(draft, ['a'], draft, [])).toBe(true);
  });
  it('lies apart for each thing that it was begun from', () => {
    expect([keyOf({ job, asset: null }), keyOf({ job: null, asset: 'x', task: { id: 't', name: '' } }), keyOf({ job: null, asset: 'x' }), keyOf({ job: null, asset: null }), keyOf({ job: null, asset: 'x', key: 'job j1' })])
      .toEqual(['job j1', 'task t', 'new x', 'new ', 'job j1']);
  });
  it('is there again with its id, so that it is one job however often it is sent, and gone once it was saved', () => {
    keep('new ', of());
    keep('new x', of({ id: 'j2' }));
    expect(recalled('new ')).toEqual(of());
    keep('new ', null);
    expect(recalled('new ')).toBeNull();
    expect(Object.keys(kept.value)).toEqual(['new x']);
  });
  it('keeps a count that was no number as none', () => {
    keep('new ', JSON.parse(JSON.stringify(of({ draft: { ...draft, parts: [{ name: 'seal', count: Number.NaN, number: null }] } }))) as Kept);
    expect(recalled('new ')!.draft.parts[0]!.count).toBeNaN();
  });
  it('goes on from the job that it carries on, or without it while the list cannot be had', () => {
    expect(beginningOf('job j1', of({ carriesOn: true }), [job])).toMatchObject({ job, key: 'job j1' });
    expect(beginningOf('job j1', of({ carriesOn: true }), [])).toMatchObject({ job: null, asset: 'acid-pump', key: 'job j1' });
  });
});
