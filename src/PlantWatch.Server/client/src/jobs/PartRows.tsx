import type { PartUsed } from '../contract.jobs';
import { Field } from '../parts/Field';
import { words } from '../words';

const w = words.jobs;

/** Parts that were fitted, a row each. */
export function PartRows({ parts, error, onChange }: { parts: PartUsed[]; error: string | undefined; onChange: (parts: PartUsed[]) => void }) {
  const set = (i: number, change: Partial<PartUsed>) => onChange(parts.map((p, k) => (k === i ? { ...p, ...change } : p)));
  return (
    <Field name="parts" label={w.parts} error={error} group>
      {parts.map((p, i) => (
        <div class="part-row" key={i}>
          <input type="text" aria-label={w.part} placeholder={w.part} value={p.name} data-testid={`part-name-${i}`} onInput={e => set(i, { name: e.currentTarget.value })} />
          <input type="text" inputmode="numeric" aria-label={w.count} value={Number.isNaN(p.count) ? '' : p.count} data-testid={`part-count-${i}`} onInput={e => set(i, { count: /^\d+$/.test(e.currentTarget.value) ? Number(e.currentTarget.value) : NaN })} />
          <input type="text" aria-label={w.number} placeholder={w.number} value={p.number ?? ''} onInput={e => set(i, { number: e.currentTarget.value })} />
          <button type="button" class="slim" onClick={() => onChange(parts.filter((_, k) => k !== i))}>{w.dropPart}</button>
        </div>))}
      <button type="button" class="slim" data-testid="add-part" onClick={() => onChange([...parts, { name: '', count: 1, number: null }])}>{w.addPart}</button>
    </Field>
  );
}
