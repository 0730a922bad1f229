import { useState } from 'preact/hooks';
import { recall, remember } from '../api/kept';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { keepDraft } from './draft';
import { FormView } from './FormView';
import { SaveView } from './SaveView';
import { keysOf, withEdits, type Schema } from './schema';
import { TextView } from './TextView';
import { usePlantFile } from './usePlantFile';

const w = words.plantFile;

/** The plant file: changed on a page, looked at before it is saved, written back with its comments. */
export function PlantFilePage() {
  const file = usePlantFile();
  const [said, setSaid] = useState('');
  const [asText, setText] = useState(recall('plant-file-as') === 'text');
  const schema = usePolled<Schema>('/plant-file/schema');
  const { there, mine, check } = file;
  if (!there) return <div class="pages stack"><h1>{w.title}</h1><p class="empty" role="status">{file.failed ? words.error.unreachable : words.loading}</p></div>;
  const theirs = mine !== null && mine.digest !== there.digest;
  const problems = (mine ? check ?? file.last : null)?.problems ?? there.problems;
  const tree = (mine && file.last ? file.last.tree : null) ?? there.tree;
  const asForm = !asText && schema.data !== null && tree !== null && typeof tree === 'object';
  const show = (text: boolean) => { setText(text); remember('plant-file-as', text ? 'text' : null); };
  const was = JSON.stringify(there.tree);
  const giveUp = () => { keepDraft(null); setSaid(''); void file.reload(); };
  return (
    <div class="pages stack plant-file-page" data-testid="plant-file-page">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead} <code>{there.name}</code></p>
      {!there.exists && <p class="notice">{w.none} <a class="line-link" href="#/start">{w.begin}</a></p>}
      {there.fault && <p class="notice bad">{there.fault.text}</p>}
      {there.exists && !there.inForce && !there.fault && <p class="notice">{w.notInForce}</p>}
      {file.failed && <p class="notice" role="alert" data-testid="file-unreachable">{w.unreachable}</p>}
      <div role="status">{!mine && said && <p class="confirmed" data-testid="file-saved"><span aria-hidden="true">{'\u2713'} </span>{said}</p>}</div>
      {theirs && <div class="notice" data-testid="file-conflict"><p><b>{w.meanwhile}</b> {w.meanwhileMeans}</p>
        <div class="inline"><button type="button" data-testid="mine-over" onClick={() => keepDraft({ ...mine, digest: there.digest })}>{w.mineOver}</button>
          <button type="button" data-testid="take-theirs" onClick={giveUp}>{w.takeTheirs}</button></div></div>}
      <div class="inline" role="group" aria-label={w.view}>
        <button type="button" class="slim" aria-pressed={asForm} data-testid="as-form" onClick={() => show(false)}>{w.asForm}</button>
        <button type="button" class="slim" aria-pressed={!asForm} data-testid="as-text" onClick={() => show(true)}>{w.asText}</button></div>
      {asForm ? <FormView c={{
        root: schema.data!, tree: withEdits(tree, mine?.waiting ?? []), problems, refused: file.refused, edit: file.edit,
        has: path => { const id = path.split(/[.[\]]+/).reduce<unknown>((at, k) => (at as Record<string, unknown> | null)?.[k], keysOf(withEdits(tree, mine?.waiting ?? []))); return typeof id === 'string' && was.includes(`"id":${JSON.stringify(id)}`); },
      }} /> : <TextView text={mine?.text ?? there.text} problems={problems} onText={file.type} />}
      {mine && <SaveView draft={mine} check={check} writable={there.writable} onGiveUp={giveUp} onConflict={() => void file.reload()}
        onSaved={view => { keepDraft(null); file.setThere(view); setSaid(view.inForce ? w.saved : w.savedNotTaken); }} />}
    </div>
  );
}
