import { render } from 'preact';
import { App } from './App';
import { startTitle } from './alarms/AlarmBar';
import { startLive } from './live/connection';
import { preloadPages } from './nav/lazyPage';
import { startOutbox } from './outbox/checks';
import { startDoses } from './outbox/doses';
import { preloadStrips } from './pool/LazyStrips';
import { startSound } from './sound/sound';

render(<App />, document.getElementById('app')!);
startOutbox();
startDoses();
startLive();
startTitle();
startSound();
preloadStrips();
preloadPages();
