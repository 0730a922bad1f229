import { useEffect, useRef, useState } from 'preact/hooks';
import { recall, remember } from '../api/kept';
import type { PlantFileView } from '../contract.plantFile';
import { onLive } from '../live/connection';
import { fetchFile } from '../plantFile/draft';
import { words } from '../words';
import { allProbes, reading } from '../live/store';
import { usePolled } from '../parts/usePolled';
import type { PackInfo } from '../contract.limits';
import { firstOpen, soFar, steps, type SoFar, type Step } from './file';
import { PackStep } from './PackStep';
import { PoolStep } from './PoolStep';
import { ProbeStep } from './ProbeStep';
import { SiteStep } from './SiteStep';
import { ValueStep } from './ValueStep';

const w = words.start;
const saysSoFar = (file: SoFar, step: Step, pack: string): string =>
  ({ site: String(file.site['name'] ?? ''), pool: file.pools.map(p => p.name).join(', '), probe: file.probes.map(p => p.name).join(', '), pack, value: '' })[step];

/** The pack by its title; by its key until that is known. */
function usePackTitle(id: string): string {
  const { data } = usePolled<PackInfo[]>(id ? '/limit-packs' : null), pack = data?.find(p => p.id === id);
  return pack ? `${pack.authority}, ${pack.edition}` : id;
}

/** A first value has come: there is nothing left to do here. */
const isThere = (file: SoFar): boolean => file.probes.some(p => allProbes.value.has(p.id) && reading(p.id).value !== null);

export function StartPage() {
  const [view, setView] = useState<PlantFileView | null>(null);
  const [failed, setFailed] = useState(false);
  const [left, setLeft] = useState(() => new Set((recall('start-left') ?? '').split(' ').filter(Boolean)));
  const [again, setAgain] = useState<Step | null>(null);
  const load = async () => { const answer = await fetchFile(); setFailed(!answer.ok); if (answer.ok) setView(answer.value); };
  useEffect(() => { void load(); return onLive(() => void load()); }, []);
  const at = view ? again ?? firstOpen(soFar(view.tree), left) : null;
  const open = useRef<HTMLLIElement>(null), before = useRef<Step | null>(null);
  useEffect(() => {
    // Whoever has finished a step is led to the next one, by keyboard and screen reader too.
    if (before.current !== null && at !== before.current) { open.current?.focus({ preventScroll: true }); open.current?.scrollIntoView({ block: 'start' }); }
    before.current = at;
  }, [at]);
  const pack = usePackTitle(view ? soFar(view.tree).pack : '');
  if (!view) return <div class="pages stack"><h1>{w.title}</h1><p class="empty" role="status">{failed ? words.error.unreachable : words.loading}</p></div>;
  const file = soFar(view.tree);
  const now = again ?? firstOpen(file, left);
  const leave = (step: Step) => { const next = new Set(left).add(step); setLeft(next); remember('start-left', [...next].join(' ')); setAgain(null); };
  const done = (next: PlantFileView) => { setView(next); setAgain(null); };
  const wrong = view.exists && view.problems.length > 0 || view.fault !== null;
  return (
    <div class="pages stack start-page" data-testid="start">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead}</p>
      {!view.writable && <p class="notice bad">{w.readOnly} <a class="line-link" href="#/plant-file">{w.toSettings}</a></p>}
      {wrong && <p class="notice bad">{w.broken} <a class="line-link" href="#/plant-file">{w.toSettings}</a></p>}
      <ol class="start-steps">
        {steps.map((step, i) => {
          const said = saysSoFar(file, step, pack), isOpen = step === now, past = steps.indexOf(now) > i || said !== '' || (step === 'value' && isThere(file));
          return (
            <li key={step} ref={isOpen ? open : null} tabIndex={-1} class={`sheet card come-to ${isOpen ? 'open' : ''}`} aria-current={isOpen ? 'step' : undefined} data-testid={`step-${step}`}>
              <div class="inline spread"><h2>{i + 1}. {w.steps[step]}</h2><span class="hint">{isOpen && !(step === 'value' && past) ? w.step(i + 1, steps.length) : past ? <><span aria-hidden="true">{'\u2713'} </span>{w.done}</> : w.later}</span></div>
              {said && !isOpen && <p>{said}</p>}
              {isOpen && said && step === 'pool' && <p>{said}</p>}
              {isOpen && !wrong && <Open step={step} file={file} done={done} leave={leave} />}
              {!isOpen && step === 'pool' && file.pools.length > 0 && <button type="button" class="quiet-button" data-testid="another-pool" onClick={() => setAgain('pool')}>{w.pool.another}</button>}
              {!isOpen && step === 'probe' && file.pools.length > 0 && now !== 'site' && now !== 'pool' && <button type="button" class="quiet-button" onClick={() => setAgain('probe')}>{w.steps.probe}</button>}
            </li>);
        })}
      </ol>
    </div>
  );
}

function Open({ step, file, done, leave }: { step: Step; file: SoFar; done: (view: PlantFileView) => void; leave: (step: Step) => void }) {
  switch (step) {
    case 'site': return <SiteStep file={file} onDone={done} />;
    case 'pool': return <PoolStep file={file} onDone={done} />;
    case 'probe': return <ProbeStep file={file} onDone={done} onNext={() => leave('probe')} />;
    case 'pack': return <PackStep onDone={done} onNext={() => leave('pack')} />;
    default: return <ValueStep file={file} />;
  }
}
