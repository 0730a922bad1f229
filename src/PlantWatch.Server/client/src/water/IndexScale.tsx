import { fixed, signed } from '../format/number';
import { words } from '../words';

const end = 1.5, width = 300;
const x = (value: number) => ((Math.min(end, Math.max(-end, value)) + end) / (2 * end)) * width;

/** Where an index stands between dissolving and depositing, with its uncertainty. An index beyond the scale stands at its end. */
export function IndexScale({ value, u }: { value: number; u: number }) {
  return (
    <figure class="index-scale">
      <svg viewBox={`-20 0 ${width + 40} 46`} role="img" aria-label={words.water.scale.label(signed(value, 2), fixed(u, 2))}>
        <rect class="scale-band" x={x(-0.5)} y="6" width={x(0.5) - x(-0.5)} height="20" />
        <path class="scale-line" d={`M0 16H${width}`} />
        {[-1.5, -1, -0.5, 0, 0.5, 1, 1.5].map(v => <g key={v}><path class="scale-tick" d={`M${x(v)} 12v8`} />
          <text class="scale-text" x={x(v)} y="41" text-anchor="middle">{v === 0 ? '0' : signed(v, 1)}</text></g>)}
        <path class="scale-u" d={`M${x(value - u)} 16H${x(value + u)}M${x(value - u)} 11v10M${x(value + u)} 11v10`} />
        <path class="scale-mark" d={`M${x(value)} 8l8 8-8 8-8-8z`} />
      </svg>
      <figcaption class="hint spread inline" aria-hidden="true"><span>{'\u2190 '}{words.water.scale.dissolves}</span><span>{words.water.scale.deposits}{' \u2192'}</span></figcaption>
    </figure>
  );
}
