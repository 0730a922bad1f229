import { allPools, allProbes, allPumps, nameOf, site } from '../live/store';
import { Field, tie } from '../parts/Field';
import { words } from '../words';

const w = words.jobs;

/** What a job is on: anything that the plant file names. */
export function AssetChoice({ value, fixed, filters, error, onChange }: {
  value: string; fixed: boolean; filters: { id: string; name: string }[]; error: string | undefined; onChange: (asset: string) => void;
}) {
  const named = (ids: Iterable<string>) => [...ids].map(id => ({ id, name: nameOf(id) }));
  const groups = [
    { label: w.assets.pumps, things: named(allPumps.value.keys()) }, { label: w.assets.probes, things: named(allProbes.value.keys()) }, { label: w.assets.filters, things: filters },
    { label: w.assets.pools, things: named(allPools.value.keys()) }, { label: w.assets.circuits, things: (site.value?.circuits ?? []).map(c => ({ id: c.id, name: c.name })) },
  ];
  const known = groups.some(g => g.things.some(t => t.id === value));
  return (
    <Field name="asset" label={w.asset} error={error}>
      <select value={value} disabled={fixed} {...tie('asset', error)} onChange={e => onChange(e.currentTarget.value)}>
        <option value="" />
        {value && !known && <option value={value}>{value}</option>}
        {groups.filter(g => g.things.length > 0).map(g => <optgroup key={g.label} label={g.label}>{g.things.map(t => <option key={t.id} value={t.id}>{t.name}</option>)}</optgroup>)}
      </select>
    </Field>
  );
}
