import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { AlarmBar } from '../alarms/AlarmBar';
import { life } from '../live/connection';
import { asHeard } from '../live/heard';
import { site } from '../live/store';
import { Nav } from '../nav/Nav';
import { NewerBar } from '../offline/NewerBar';
import { TimerBar } from '../round/TimerBar';
import { hasMoved, route } from '../router';
import { words } from '../words';
import { NotLive } from './NotLive';
import { setTheme, theme, type Theme } from './theme';

function Head() {
  const state = life.value.state;
  return (
    <header class="head">
      <a class="site" href="#/"><b data-testid="site-name">{site.value?.name || words.product}</b></a>
      <span class={`life l-${state}`} data-testid="life">{state === 'live' ? words.live.live : state === 'lost' ? words.live.not : words.live.connecting}</span>
      <label class="theme"><span class="sr">{words.theme.label}</span>
        <select value={theme.value} data-testid="theme" onChange={e => setTheme(e.currentTarget.value as Theme)}>
          {(['auto', 'light', 'dark'] as const).map(t => <option key={t} value={t}>{words.theme[t]}</option>)}
        </select>
      </label>
      <Nav />
    </header>
  );
}

/** Says in the style sheet how high the bars at the top are just now: what is gone to must not lie under them. */
function useTopHeight() {
  const top = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const watch = new ResizeObserver(() => document.documentElement.style.setProperty('--top', `${top.current!.offsetHeight}px`));
    watch.observe(top.current!);
    return () => watch.disconnect();
  }, []);
  return top;
}

export function Shell({ children }: { children: ComponentChildren }) {
  const main = useRef<HTMLElement>(null), top = useTopHeight();
  const page = route.value.join('/');
  // With the page itself, not after its first picture: who is quick with Tab would be thrown back to the top.
  useLayoutEffect(() => {
    // The page that was opened is left where the browser put it; the wall has no frame, and whoever leaves it comes to a new one.
    if (!hasMoved()) return;
    scrollTo(0, 0);
    // A new page begins at its top for keyboards and screen readers too.
    main.current?.focus({ preventScroll: true });
  }, [page]);
  return (
    <div class={`frame ${life.value.state === 'live' ? '' : 'away'} ${asHeard.value === null ? '' : 'as-heard'}`}>
      <button class="skip" type="button" onClick={() => main.current?.focus()}>{words.nav.skip}</button>
      <div class="top" ref={top}><Head /><NotLive /><AlarmBar /><NewerBar /><TimerBar /></div>
      <main ref={main} tabIndex={-1}>{children}</main>
    </div>
  );
}
