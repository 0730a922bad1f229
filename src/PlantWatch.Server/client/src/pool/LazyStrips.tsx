import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { words } from '../words';
import type { StripsProps } from './Strips';

let loaded: ComponentType<StripsProps> | null = null;
const load = () => import('./Strips').then(m => { loaded = m.default; return loaded; });

/** Fetches the charts while the browser has nothing else to do, so that they are there when a pool is opened. */
export function preloadStrips(): void {
  setTimeout(() => void load().catch(() => {}), 3_000);
}

/** The strips with the chart library, which the other pages do not need to load. */
export function LazyStrips(props: StripsProps) {
  const [Part, setPart] = useState<ComponentType<StripsProps> | null>(() => loaded);
  const [failed, fail] = useState(false);
  useEffect(() => { if (!Part) load().then(p => setPart(() => p), () => fail(true)); }, []);
  if (Part) return <Part {...props} />;
  return <p class="empty">{failed ? words.error.unreachable : words.loading}</p>;
}
