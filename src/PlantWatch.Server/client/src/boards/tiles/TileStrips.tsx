import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { query } from '../../api/http';
import type { CheckAnswer, ProbeInfo } from '../../contract';
import { now, serverNow, thisHour } from '../../live/clock';
import { circuitOfPool, headingOf, limitingPool, limitsOfPool, nameOf, poolViews } from '../../live/store';
import { limitOf } from '../../parts/beyond';
import { useShared } from '../../parts/useShared';
import { ProbeStrip } from '../../pool/ProbeStrip';
import { followed, following, type Shown } from '../../pool/window';
import type { TileProps } from './props';

export interface TileStripsProps extends TileProps { probes: ProbeInfo[] }

const hour = 3_600_000;
const none: CheckAnswer[] = [];
/** Letters grow on a wall, and the screen does not: a chart need not be as high. */
const onWall = 0.62;

/** The tests of the time shown, of all pools: every strip of a board asks the same. */
function useChecks(hours: number): CheckAnswer[] {
  const from = new Date((thisHour.value - Math.ceil(hours)) * hour).toISOString();
  const { data, reload } = useShared<CheckAnswer[]>('/checks' + query({ from }), 5 * 60_000);
  const fresh = [...poolViews.value.values()].map(p => p.manual.map(m => m.checkId).join()).join();
  useEffect(() => { if (data) reload(); }, [fresh]);
  return data ?? none;
}

/** A probe of the common return is held beside the tests of every pool of its circuit. */
const isBeside = (probe: ProbeInfo, poolId: string) => probe.poolId === poolId || (probe.poolId === null && (circuitOfPool(poolId)?.probes.some(p => p.id === probe.id) ?? false));

function Drawn({ probe, checks, pool, ...p }: { probe: ProbeInfo; checks: CheckAnswer[]; pool: string | null } & Omit<Parameters<typeof ProbeStrip>[0], 'probe' | 'checks' | 'limit'> & { limits: boolean }) {
  const mine = useMemo(() => checks.filter(c => isBeside(probe, c.check.poolId)), [checks, probe]);
  const limit = p.limits ? limitOf(limitsOfPool(limitingPool(probe, pool)), probe.measurand) : undefined;
  return <ProbeStrip {...p} probe={probe} checks={mine} limit={limit} owner={false} pace={1_000} />;
}

/** Strips that only follow: what is drawn goes on with the time, once a second at most. */
export default function TileStrips({ probes, tile, pool, wall }: TileStripsProps) {
  const shown = useMemo(() => following(tile.hours * hour, serverNow()), []);
  const window = useSignal<Shown>(shown), cursor = useSignal<number | null>(null);
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const checks = useChecks(tile.hours);

  useEffect(() => { window.value = following(tile.hours * hour, serverNow()); }, [tile.hours]);
  useSignalEffect(() => { window.value = followed(window.peek(), now.value); });
  useEffect(() => {
    const h = host.current!;
    const watch = new ResizeObserver(() => setWidth(Math.floor(h.clientWidth)));
    watch.observe(h);
    return () => watch.disconnect();
  }, []);

  return (
    <div class="tile-strips" ref={host}>
      {width > 0 && probes.map((p, i) => (
        <Drawn key={p.id} probe={p} pool={pool} heading={pool === null ? nameOf(p.id) : headingOf(p, probes)} checks={tile.checks ? checks : none} limits={tile.limits} raw={tile.raw} plain={wall} share={wall ? onWall : undefined} shown={window} cursor={cursor} width={width} axis={i === probes.length - 1} />))}
    </div>
  );
}
