import type { PlantFileProblem } from '../contract.plantFile';
import { words } from '../words';

const w = words.plantFile;

/** What is wrong, line by line; each leads to its line. */
export function Problems({ problems, onJump }: { problems: PlantFileProblem[]; onJump?: (line: number) => void }) {
  return (
    <div id="plant-problems" role="status" data-testid="plant-problems">
      {problems.length === 0 ? <p class="hint">{w.noProblems}</p> : <>
        <p class="remark"><span aria-hidden="true">{'\u25b2'} </span>{w.problems(problems.length)}</p>
        <ul class="file-problems">
          {problems.map((p, i) => <li key={i}>
            {p.file || !onJump ? <b>{p.file ? `${p.file}, ` : ''}{w.line(p.line)}</b> : <button class="link-button" type="button" onClick={() => onJump(p.line)}>{w.line(p.line)}</button>}
            {' '}{p.key && <code>{p.key}</code>} {p.text}
          </li>)}
        </ul>
      </>}
    </div>
  );
}
