import { query } from '../../api/http';
import type { EntriesView } from '../../contract.record';
import { thisHour } from '../../live/clock';
import { useShared } from '../../parts/useShared';
import { Row } from '../../record/Entries';
import { words } from '../../words';
import type { TileProps } from './props';

/** The last entries of the record, newest first. */
export function NotesTile({ tile }: TileProps) {
  const from = new Date((thisHour.value - Math.ceil(tile.hours)) * 3_600_000).toISOString();
  const { data, failed } = useShared<EntriesView>('/entries' + query({ from, about: tile.about }), 30_000);
  if (data === null) return <p class="hint">{failed ? words.error.unreachable : words.loading}</p>;
  if (data.entries.length === 0) return <p class="hint">{words.entries.none}</p>;
  const rest = data.entries.length - tile.most;
  return (
    <>
      <ul class="history">{data.entries.slice(0, tile.most).map(e => <Row key={e.id} entry={e} />)}</ul>
      {rest > 0 && <p class="hint">{words.overview.more(rest)}</p>}
    </>
  );
}
