import { describe, expect, it } from 'vitest';
import { Outbox, roomLeft, type Outcome, type Shelf } from './outbox';

function memory(): Shelf & { map: Map<string, string> } {
  const map = new Map<string, string>();
  return { map, keys: () => [...map.keys()], get: k => map.get(k) ?? null, set: (k, v) => { map.set(k, v); }, remove: k => { map.delete(k); } };
}

const refusal = { type: 'about:blank', title: 'impossible', status: 400, errors: [] };

function outbox(answers: (id: string) => Outcome<string>, shelf = memory()) {
  const sent: string[] = [];
  const box = new Outbox<string, string>('box.', shelf, async id => { sent.push(id); return answers(id); }, () => {}, () => {});
  return { box, sent, shelf };
}

describe('the outbox', () => {
  it('keeps an item until it is answered', async () => {
    let up = false;
    const { box, sent } = outbox(() => up ? { kind: 'answered', answer: 'ok' } : { kind: 'unreachable' });
    box.put('a', 'first', 1);
    expect(await box.flush()).toBe(1);
    expect(box.items()).toHaveLength(1);
    up = true;
    expect(await box.flush()).toBe(0);
    expect(box.items()).toHaveLength(0);
    expect(sent).toEqual(['a', 'a']);
  });

  it('sets a refused item aside and sends what stands behind it', async () => {
    const { box, sent } = outbox(id => id === 'a' ? { kind: 'refused', problem: refusal } : { kind: 'answered', answer: 'ok' });
    box.put('a', 'impossible', 1);
    box.put('b', 'fine', 2);
    expect(await box.flush()).toBe(0);
    await box.flush();
    expect(sent).toEqual(['a', 'b']);
    expect(box.items().map(i => [i.id, i.refusal?.title])).toEqual([['a', 'impossible']]);
  });

  it('goes on past an item that cannot be sent', async () => {
    const { box } = outbox(id => id === 'a' ? { kind: 'unreachable' } : { kind: 'answered', answer: 'ok' });
    box.put('a', '1', 1);
    box.put('b', '2', 2);
    expect(await box.flush()).toBe(1);
    expect(box.items().map(i => i.id)).toEqual(['a']);
  });

  it('sends oldest first and never twice at once', async () => {
    const { box, sent } = outbox(() => ({ kind: 'answered', answer: 'ok' }));
    box.put('late', '2', 20);
    box.put('early', '1', 10);
    await Promise.all([box.flush(), box.flush()]);
    expect(sent).toEqual(['early', 'late']);
  });

  it('sends what is put in while a round is under way', async () => {
    let box: Outbox<string, string>;
    const sent: string[] = [];
    box = new Outbox('box.', memory(), async id => {
      sent.push(id);
      if (id === 'a') { box.put('b', '2', 2); void box.flush(); }
      return { kind: 'answered', answer: 'ok' };
    }, () => {}, () => {});
    box.put('a', '1', 1);
    await box.flush();
    expect(sent).toEqual(['a', 'b']);
  });

  it('survives a page that is closed and opened again', async () => {
    const shelf = memory();
    outbox(() => ({ kind: 'unreachable' }), shelf).box.put('a', 'typed', 1);
    const { box, sent } = outbox(() => ({ kind: 'answered', answer: 'ok' }), shelf);
    await box.flush();
    expect(sent).toEqual(['a']);
  });

  it('leaves an unreadable item in place and works on', async () => {
    const { box, shelf, sent } = outbox(() => ({ kind: 'answered', answer: 'ok' }));
    shelf.map.set('box.x', '{torn');
    box.put('a', 'fine', 1);
    await box.flush();
    expect(sent).toEqual(['a']);
    expect(shelf.map.get('box.x')).toBe('{torn');
  });

  it('throws when the browser keeps nothing, so that the form does', () => {
    const shelf = memory();
    shelf.set = () => { throw new Error('full'); };
    const { box } = outbox(() => ({ kind: 'unreachable' }), shelf);
    expect(() => box.put('a', 'typed', 1)).toThrow('full');
  });

  it('of two tabs with one shelf sends each thing once when they take turns', async () => {
    const shelf = memory(), sent: string[] = [];
    let turn: Promise<unknown> = Promise.resolve();
    const alone = <T>(work: () => Promise<T>): Promise<T> => { const mine = turn.then(work); turn = mine.catch(() => {}); return mine; };
    const tab = () => new Outbox<string, string>('box.', shelf, async id => { await Promise.resolve(); sent.push(id); return { kind: 'answered', answer: 'ok' }; }, () => {}, () => {}, alone);
    const [one, other] = [tab(), tab()];
    one.put('a', 'x', 1);
    one.put('b', 'y', 2);
    await Promise.all([one.flush(), other.flush()]);
    expect(sent).toEqual(['a', 'b']);
  });

  it('knows when there is no room left, and leaves nothing behind from asking', () => {
    const shelf = memory();
    expect(roomLeft(shelf)).toBe(true);
    expect(shelf.map.size).toBe(0);
    shelf.set = () => { throw new Error('full'); };
    expect(roomLeft(shelf)).toBe(false);
  });

  it('holds up nobody where the device has no room for the reason of a refusal', async () => {
    const shelf = memory();
    const { box, sent } = outbox(id => id === 'a' ? { kind: 'refused', problem: refusal } : { kind: 'answered', answer: 'ok' }, shelf);
    box.put('a', 'first', 1);
    box.put('b', 'second', 2);
    shelf.set = () => { throw new Error('quota'); };
    await box.flush();
    expect(sent).toEqual(['a', 'b']);
    expect(box.items().map(i => i.id)).toEqual(['a']);
  });
});
