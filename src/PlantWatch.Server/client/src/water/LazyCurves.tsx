import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { onLive } from '../live/connection';
import { words } from '../words';
import type { CurvesProps } from './Curves';

let loaded: ComponentType<CurvesProps> | null = null;
const load = () => import('./Curves').then(m => { loaded = m.default; return loaded; });

/** The curves with the chart library, fetched when they are first looked at. */
export function LazyCurves(props: CurvesProps) {
  const [Part, setPart] = useState<ComponentType<CurvesProps> | null>(() => loaded);
  const [failed, fail] = useState(false);
  useEffect(() => {
    if (Part) return;
    const attempt = () => void load().then(p => setPart(() => p), () => fail(true));
    attempt();
    return onLive(attempt);
  }, [Part]);
  if (Part) return <Part {...props} />;
  return <p class="empty">{failed ? words.error.unreachable : words.loading}</p>;
}
