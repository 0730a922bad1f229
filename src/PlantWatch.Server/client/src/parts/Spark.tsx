import { useEffect, useState } from 'preact/hooks';
import { get, query } from '../api/http';
import type { LimitBand, ProbeInfo, SeriesView } from '../contract';
import { now, serverNow } from '../live/clock';
import { onLive } from '../live/connection';
import { reading } from '../live/store';
import { words } from '../words';
import { sparkPath } from './sparkPath';

const hours = 3;
const box = { width: 120, height: 34 };

function useRecent(probeId: string): SeriesView | null {
  const [view, setView] = useState<SeriesView | null>(null);
  useEffect(() => {
    let gone = false;
    const load = async () => {
      const to = serverNow();
      const q = query({ probe: probeId, from: new Date(to - hours * 3_600_000).toISOString(), to: new Date(to).toISOString(), width: box.width });
      const answer = await get<SeriesView>('/series' + q);
      if (!gone && answer.ok) setView(answer.value);
    };
    void load();
    const timer = setInterval(() => void load(), 60_000);
    const stop = onLive(() => void load());
    return () => { gone = true; clearInterval(timer); stop(); };
  }, [probeId]);
  return view;
}

/** The last hours of a probe as a small strip, its limits as a band. It is a picture of the value beside it, so it is hidden from screen readers. */
export function Spark({ probe, limit }: { probe: ProbeInfo; limit?: LimitBand | undefined }) {
  const view = useRecent(probe.id);
  const newest = reading(probe.id).value;
  const to = Math.floor(now.value / 10_000) * 10_000;
  const drawn = sparkPath(view, newest, limit, to - hours * 3_600_000, to, box);
  return (
    <svg class="spark" viewBox={`0 0 ${box.width} ${box.height}`} preserveAspectRatio="none" aria-hidden="true">
      <title>{words.overview.last}</title>
      {drawn.band && <rect class="spark-band" x="0" y={drawn.band.y} width={box.width} height={drawn.band.height} />}
      {drawn.path && <path class="spark-line" d={drawn.path} />}
    </svg>
  );
}
