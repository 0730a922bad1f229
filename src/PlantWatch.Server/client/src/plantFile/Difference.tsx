import type { DiffLine } from '../contract.plantFile';
import { words } from '../words';

const w = words.plantFile;
const sign = { same: ' ', removed: '\u2212', added: '+' } as const;

/** Lines that go and come, with their neighbours. */
export function Difference({ lines }: { lines: DiffLine[] }) {
  if (lines.length === 0) return <p class="hint">{w.noChange}</p>;
  return (
    <div class="file-scroll" tabIndex={0} role="region" aria-label={w.changes}>
      <ul class="file-diff" data-testid="file-diff">
        {lines.map((l, i) => {
          const before = lines[i - 1];
          const gap = before !== undefined && l.fate === 'same' && before.fate === 'same' && l.line > before.line + 1;
          return <li key={i} class={`d-${l.fate}${gap ? ' gap' : ''}`}><span class="n" aria-hidden="true">{l.line}</span><span aria-hidden="true">{sign[l.fate]}</span><code>{l.fate !== 'same' && <span class="sr">{w[l.fate]}: </span>}{l.text || '\u00a0'}</code></li>;
        })}
      </ul>
    </div>
  );
}
