import { useEffect, useRef } from 'preact/hooks';
import { uuid7 } from '../format/uuid7';
import { onLive } from '../live/connection';
import { Remark } from '../parts/Field';
import { words } from '../words';
import { asData, pathOf, redraw, send, type Item } from './pictures';

const w = words.jobs;
export const mostPictures = 12;

/** Pictures of a job, taken with the phone or picked. What waits for the server goes out by itself while the form is open. */
export function PictureField({ items, change, error }: { items: Item[]; change: (next: (items: Item[]) => Item[]) => void; error: string | undefined }) {
  const newest = useRef(items);
  newest.current = items;
  const set = (key: string, to: Partial<Item>) => change(all => all.map(i => i.key === key ? { ...i, ...to } : i));
  const go = async (key: string, blob: Blob) => {
    set(key, { state: 'going' });
    const answer = await send(blob);
    set(key, answer.kind === 'there' ? { state: 'there', hash: answer.view.hash, blob: null, why: null } : answer.kind === 'refused' ? { state: 'refused', why: answer.why } : { state: 'waits' });
  };
  useEffect(() => onLive(() => { for (const i of newest.current) if (i.state === 'waits' && i.blob) void go(i.key, i.blob); }), []);
  const add = async (file: File) => {
    const key = uuid7();
    try {
      const blob = await redraw(file);
      const preview = await asData(blob);
      change(all => [...all, { key, preview, blob, state: 'going', hash: null, why: null }]);
      await go(key, blob);
    } catch {
      change(all => [...all, { key, preview: '', blob: null, state: 'refused', hash: null, why: w.notRead(file.name) }]);
    }
  };
  const pick = (input: HTMLInputElement) => { const files = [...(input.files ?? [])].slice(0, mostPictures - items.length); input.value = ''; for (const f of files) void add(f); };
  return (
    <fieldset class={`field ${error ? 'wrong' : ''}`} data-testid="pictures"><legend class="label">{w.pictures}</legend>
      {items.length > 0 && <ul class="picture-list">{items.map(i => (
        <li key={i.key} data-state={i.state}>{(i.hash || i.preview) && <img src={i.hash ? pathOf(i.hash) : i.preview} alt={w.pictureOf} width="96" height="96" />}
          <span class="hint">{i.state === 'going' ? w.going : i.state === 'waits' ? w.waits : i.state === 'refused' ? i.why : ''}</span>
          <button type="button" class="slim" onClick={() => change(all => all.filter(x => x.key !== i.key))}>{w.dropPicture}</button></li>))}</ul>}
      {items.length < mostPictures && <label class="button picture-pick">{w.addPicture}<input type="file" class="sr" accept="image/jpeg,image/png,image/webp" multiple data-testid="add-picture" onChange={e => pick(e.currentTarget)} /></label>}
      <p class="hint">{w.pictureHint}</p>
      <Remark name="pictures" text={error} />
    </fieldset>
  );
}
