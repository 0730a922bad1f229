import { h, type Attributes, type ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { life, onLive } from '../live/connection';
import { learnRest, words } from '../words';
import { dress } from './dress';

/** A part of the page, or a page, that is loaded when it is wanted. */
export function lazyPart<P extends object>(bring: () => Promise<{ default: ComponentType<P> }>) {
  let loaded: ComponentType<P> | null = null;
  const load = () => Promise.all([learnRest(), dress()]).then(bring).then(m => { loaded = m.default; return loaded; });
  const Lazy = (props: P) => {
    const [Part, setPart] = useState<ComponentType<P> | null>(() => loaded);
    const [failed, fail] = useState(false);
    useEffect(() => {
      if (Part) return;
      const attempt = () => load().then(p => setPart(() => p), () => { fail(true); if (life.peek().state === 'live') renew(); });
      void attempt();
      return onLive(() => void attempt());
    }, [Part]);
    if (Part) return h(Part, props as P & Attributes);
    return <p class="empty">{failed ? words.error.unreachable : words.loading}</p>;
  };
  return { Lazy, load };
}

/**
 * After an update of the server the parts of the page have other names: the open page then loads itself anew, once, and only while the
 * server answers. Without a server it stays: a page that shows the last values is worth more than an error of the browser.
 */
function renew(): void {
  const key = 'plantwatch.renewed';
  try {
    if (Date.now() - Number(sessionStorage.getItem(key) ?? 0) < 60_000) return;
    sessionStorage.setItem(key, String(Date.now()));
  } catch { return; }
  location.reload();
}
