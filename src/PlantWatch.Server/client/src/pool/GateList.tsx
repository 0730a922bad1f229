import type { GateView, GateWord } from '../contract.poolState';
import { StandingGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';

const w = words.poolState;

function Mark({ word }: { word: GateWord }) {
  return word === 'passed' ? <TickGlyph /> : word === 'not_passed' ? <WarnGlyph /> : <StandingGlyph standing="unknown" />;
}

/** Line by line, each with a shape and a word: what is not met or not known leads to where it is mended. */
export function GateList({ gate }: { gate: GateView }) {
  return (
    <details open={!gate.passed} data-testid="gate">
      <summary>{w.gate}</summary>
      <p class="hint">{w.gateHint}</p>
      {gate.signers && <p data-testid="signers">{gate.signers.length > 0 ? w.signers(gate.signers.join(', ')) : w.noSigners}</p>}
      <ul class="gate-lines">{gate.lines.map(line => (
        <li key={line.code} data-testid={`gate-${line.code}`}><Mark word={line.word} /> <b>{w.marks[line.word]}</b>: {line.why.text}
          {line.word !== 'passed' && (line.code.startsWith('test.') || line.code === 'bottom') && <> <a href={link('check', gate.poolId)}>{w.test}</a></>}</li>))}</ul>
    </details>
  );
}
