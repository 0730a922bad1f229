import { describe, expect, it } from 'vitest';
import { newDraft, objections, requestOf } from './noteDraft';

const now = Date.parse('2026-05-04T12:00:00Z'), hour = 3_600_000;
const good = { ...newDraft(now - 2 * hour, now - hour), text: 'School party' };
const fields = (part: Partial<typeof good>, by = 'R. Hale') => Object.keys(objections({ ...good, ...part }, by, now));

describe('a note that is written', () => {
  it('may be dragged from right to left', () => expect(newDraft(20, 10)).toMatchObject({ from: 10, to: 20 }));
  it('is sent when nothing is missing, and a moment is a time too', () => expect([fields({}), fields({ to: good.from })]).toEqual([[], []]));
  it('says beside each field what it lacks', () => {
    expect(fields({ text: ' ' }, ' ')).toEqual(['text', 'by']);
    expect(fields({ to: good.from - 1 })).toEqual(['to']);
    expect(fields({ to: now + hour })).toEqual(['to']);
    expect(fields({ from: now - 400 * 24 * hour })).toEqual(['to']);
    expect(fields({ mends: { id: 'a' } as never })).toEqual(['why']);
  });
  it('names what it corrects and keeps the dragged moment', () =>
    expect(requestOf({ ...good, from: 1_777, mends: { id: 'a' } as never, why: ' misread ', retract: true }, 'main', ' R. Hale ')).toMatchObject({ from: '1970-01-01T00:00:01.777Z', corrects: 'a', why: 'misread', retracted: true, by: 'R. Hale' }));
});
