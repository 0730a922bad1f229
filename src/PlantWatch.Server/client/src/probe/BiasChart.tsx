import { useEffect, useRef, useState } from 'preact/hooks';
import type { JudgementView } from '../contract';
import { fixed, signed } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';

const frame = { height: 150, left: 52, right: 10, top: 10, bottom: 22 };

/** The bias after each check with its uncertainty, oldest left. Zero is where the probe reads what it should. */
export function BiasChart({ judgements, decimals }: { judgements: JudgementView[]; decimals: number }) {
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(600);
  useEffect(() => {
    if (!host.current) return;
    const watch = new ResizeObserver(([e]) => setWidth(Math.max(200, Math.floor(e!.contentRect.width))));
    watch.observe(host.current);
    return () => watch.disconnect();
  }, [judgements.length > 0]);
  const box = { ...frame, width };
  const known = judgements.filter(j => j.bias).sort((a, b) => (a.sampledAt < b.sampledAt ? -1 : 1));
  if (known.length === 0) return <p class="hint">{words.probe.noBias}</p>;
  const times = known.map(j => Date.parse(j.sampledAt));
  const reach = Math.max(...known.map(j => Math.abs(j.bias!.value) + j.bias!.u)) * 1.1 || 1;
  const t0 = times[0]!, t1 = Math.max(times.at(-1)!, t0 + 3_600_000);
  const x = (t: number) => box.left + 8 + (box.width - box.left - box.right - 16) * (known.length === 1 ? 0.5 : (t - t0) / (t1 - t0));
  const y = (v: number) => box.top + (box.height - box.top - box.bottom) * (1 - (v + reach) / (2 * reach));
  const path = known.map((j, i) => `${i ? 'L' : 'M'}${x(times[i]!).toFixed(1)} ${y(j.bias!.value).toFixed(1)}`).join('');
  const newest = known.at(-1)!.bias!;
  return (
    <div ref={host}><svg class="bias" viewBox={`0 0 ${box.width} ${box.height}`} role="img" aria-label={words.probe.biasLabel(signed(newest.value, decimals), fixed(newest.u, decimals))}>
      <line class="bias-zero" x1={box.left} x2={box.width - box.right} y1={y(0)} y2={y(0)} />
      {[reach * 0.9, 0, -reach * 0.9].map(v => <text key={v} class="bias-text" x={box.left - 6} y={y(v) + 4} text-anchor="end">{signed(v, decimals)}</text>)}
      <path class="bias-line" d={path} />
      {known.map((j, i) => (
        <g key={j.checkId} class={j.verdict === 'check_suspect' ? 'bias-doubted' : ''}>
          <line class="bias-bar" x1={x(times[i]!)} x2={x(times[i]!)} y1={y(j.bias!.value + j.bias!.u)} y2={y(j.bias!.value - j.bias!.u)} />
          <circle class="bias-dot" cx={x(times[i]!)} cy={y(j.bias!.value)} r="4" />
        </g>))}
      <text class="bias-text" x={box.left} y={box.height - 5}>{dayClock(t0, zone.value)}</text>
      <text class="bias-text" x={box.width - box.right} y={box.height - 5} text-anchor="end">{dayClock(times.at(-1)!, zone.value)}</text>
    </svg></div>
  );
}
