import { useRef } from 'preact/hooks';
import type { PlantFileProblem } from '../contract.plantFile';
import { Problems } from './Problems';
import { words } from '../words';

const w = words.plantFile;

/** The file as text with its line numbers, for who prefers it. */
export function TextView({ text, problems, onText }: { text: string; problems: PlantFileProblem[]; onText: (text: string) => void }) {
  const area = useRef<HTMLTextAreaElement>(null), gutter = useRef<HTMLPreElement>(null);
  // A text field knows one kind of line end; the file keeps its own.
  const shown = text.replaceAll('\r\n', '\n'), end = text.includes('\r\n') ? '\r\n' : '\n';
  const count = shown.split('\n').length;
  const wrong = new Set(problems.filter(p => !p.file).map(p => p.line));
  const follow = () => { if (gutter.current && area.current) gutter.current.scrollTop = area.current.scrollTop; };
  const jump = (line: number) => {
    const field = area.current;
    if (!field) return;
    const lines = shown.split('\n');
    const from = lines.slice(0, line - 1).reduce((n, l) => n + l.length + 1, 0);
    field.focus();
    field.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
    field.scrollTop = Math.max(0, (line - 4) * (field.scrollHeight / lines.length));
    field.scrollIntoView({ block: 'nearest' });
    follow();
  };
  return (
    <section class="sheet card">
      <label class="label" for="f-plant-text">{w.text}</label>
      <div class="file-text">
        <pre ref={gutter} aria-hidden="true">{Array.from({ length: count }, (_, i) => (wrong.has(i + 1) ? '\u25b2' : '') + (i + 1)).join('\n') + '\n\n'}</pre>
        <textarea ref={area} id="f-plant-text" data-testid="field-plant-text" spellcheck={false} autocapitalize="off" autocomplete="off" wrap="off" value={shown} aria-describedby="plant-problems"
          aria-invalid={problems.length > 0 ? true : undefined} onInput={e => onText(e.currentTarget.value.replaceAll('\n', end))} onScroll={follow} />
      </div>
      <Problems problems={problems} onJump={jump} />
    </section>
  );
}
