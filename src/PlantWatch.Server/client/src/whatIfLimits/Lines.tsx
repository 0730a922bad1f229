import { useState } from 'preact/hooks';
import type { WhatIfLimitsRun } from '../contract.whatIfLimits';
import { words } from '../words';

const w = words.whatIfLimits;

/** What a person copies into the plant file, if it is to be so. */
export function Lines({ lines }: { lines: WhatIfLimitsRun['lines'] }) {
  const [copied, setCopied] = useState('');
  const copy = async (line: string) => {
    try { await navigator.clipboard.writeText(line); setCopied(line); } catch { setCopied(''); }
  };
  return (
    <section class="sheet card" data-testid="plant-lines">
      <h2>{w.lines}</h2><p class="hint">{w.linesMeans}</p>
      {lines.map(l => <div key={l.line + l.pool} class="plant-line"><p>{w.under(l.poolName)}</p><pre tabIndex={0}>{l.line}</pre>
        {navigator.clipboard && <button type="button" class="slim" onClick={() => void copy(l.line)}>{copied === l.line ? w.copied : w.copy}</button>}</div>)}
    </section>
  );
}
