import type { ComponentChildren, JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { life } from '../live/connection';
import { alarms, site } from '../live/store';
import { keptChecks } from '../outbox/checks';
import { link, route } from '../router';
import { words } from '../words';
import { AlarmBar, standingAlarms } from './AlarmBar';
import { NotLive } from './NotLive';
import { setTheme, theme, type Theme } from './theme';

const icon = (d: string): JSX.Element => <svg class="nav-icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true"><path d={d} /></svg>;
const pages = [
  { key: '', name: words.nav.overview, icon: icon('M3 9c3-3 6-3 9 0s6 3 9 0M3 16c3-3 6-3 9 0s6 3 9 0') },
  { key: 'check', name: words.nav.check, icon: icon('M9 3h6M10 3v6l-5 9a2 2 0 0 0 2 3h10a2 2 0 0 0 2-3l-5-9V3M7.5 15h9') },
  { key: 'alarms', name: words.nav.alarms, icon: icon('M6 17V11a6 6 0 0 1 12 0v6l2 2H4zM10 21h4') },
  { key: 'pumps', name: words.nav.pumps, icon: icon('M4 20V9h9v11zM13 13h4V7M14 4h6v3h-6zM6 13h5') },
  { key: 'record', name: words.nav.record, icon: icon('M5 3h14v18H5zM8 8h8M8 12h8M8 16h5') },
];

/** Pages below the overview. */
const ofOnePool = new Set(['pool', 'probe', 'balance', 'what-if', 'dose', 'plan', 'incident', 'calibrate', 'sheet']);

function Badge({ page }: { page: string }) {
  const n = page === 'alarms' ? standingAlarms(alarms.value).filter(a => !a.acknowledged).length : page === 'check' ? keptChecks.value.length : 0;
  return n > 0 ? <span class="badge">{n}</span> : null;
}

function Nav() {
  const here = route.value[0] ?? '';
  const current = ofOnePool.has(here) ? '' : here;
  return (
    <nav class="tabs" aria-label={words.nav.label}>
      {pages.map(p => (
        <a key={p.key} href={p.key ? link(p.key) : '#/'} aria-current={p.key === current ? 'page' : undefined} data-testid={`nav-${p.key || 'overview'}`}>
          {p.icon}<span>{p.name}<Badge page={p.key} /></span>
        </a>))}
    </nav>
  );
}

function Head() {
  const state = life.value.state;
  return (
    <header class="head">
      <a class="site" href="#/"><b data-testid="site-name">{site.value?.name ?? words.product}</b></a>
      <Nav />
      <span class={`life l-${state}`} data-testid="life">{state === 'live' ? words.live.live : state === 'lost' ? words.live.not : words.live.connecting}</span>
      <label class="theme"><span class="sr">{words.theme.label}</span>
        <select value={theme.value} data-testid="theme" onChange={e => setTheme(e.currentTarget.value as Theme)}>
          {(['auto', 'light', 'dark'] as const).map(t => <option key={t} value={t}>{words.theme[t]}</option>)}
        </select>
      </label>
    </header>
  );
}

export function Shell({ children }: { children: ComponentChildren }) {
  const main = useRef<HTMLElement>(null);
  const page = route.value.join('/');
  const first = useRef(true);
  // With the page itself, not after its first picture: who is quick with Tab would be thrown back to the top.
  useLayoutEffect(() => {
    if (first.current) { first.current = false; return; }
    scrollTo(0, 0);
    // A new page begins at its top for keyboards and screen readers too.
    main.current?.focus({ preventScroll: true });
  }, [page]);
  return (
    <div class={`frame ${life.value.state === 'live' ? '' : 'away'}`}>
      <button class="skip" type="button" onClick={() => main.current?.focus()}>{words.nav.skip}</button>
      <div class="top"><Head /><NotLive /><AlarmBar /></div>
      <main ref={main} tabIndex={-1}>{children}</main>
    </div>
  );
}
