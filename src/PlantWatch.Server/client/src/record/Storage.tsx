import { Fragment } from 'preact';
import type { StorageView } from '../contract.record';
import { fixed, grouped } from '../format/number';
import { dayOnly, fullClock } from '../format/zone';
import { site, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const w = words.storage;
const littleDays = 90;

/** Bytes as people buy disks: powers of ten. */
function size(bytes: number): string {
  return bytes >= 1e9 ? w.gb(fixed(bytes / 1e9, 1)) : bytes >= 1e6 ? w.mb(fixed(bytes / 1e6, 1)) : w.kb(fixed(bytes / 1e3, 0));
}

function Facts({ view: v }: { view: StorageView }) {
  const facts: [string, string][] = [
    [w.size, size(v.bytes)], [w.aDay, size(v.bytesADay)], [w.inAYear, size(v.bytesInAYear)], [w.free, size(v.diskFreeBytes)],
    [w.lasts, v.daysLeft === null ? w.long : w.days(grouped(Math.floor(v.daysLeft)))], [w.kept, v.rawDays === null ? w.forEver : w.days(grouped(v.rawDays))],
    [w.backup, v.backupAt === null ? w.noBackup : fullClock(v.backupAt, zone.value)],
  ];
  return (
    <>
      {v.daysLeft !== null && v.daysLeft < littleDays && <p class="notice" role="status" data-testid="storage-little">{w.little}</p>}
      <dl class="facts">{facts.map(([name, value]) => <Fragment key={name}><dt>{name}</dt><dd>{value}</dd></Fragment>)}</dl>
      {v.gone.map(g => <p key={g.circuit} class="hint">{w.gone(site.value?.circuits.find(c => c.id === g.circuit)?.name ?? g.circuit, dayOnly(g.before, zone.value))}</p>)}
      <p class="hint">{w.measured(fullClock(v.measuredAt, zone.value))}</p>
    </>
  );
}

/** What the record takes up, and how long the disk lasts. */
export function Storage() {
  const { data, failed } = usePolled<StorageView>('/storage', 3_600_000);
  return (
    <section class="sheet card" data-testid="storage"><h2>{w.title}</h2>
      {data === null ? <p class="hint" role="status">{failed ? words.error.unreachable : w.waiting}</p> : <Facts view={data} />}
    </section>
  );
}
