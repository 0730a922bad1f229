import { render } from 'preact';
import './styles/index.css';
import { App } from './App';
import { startLive } from './live/connection';
import { startOutbox } from './outbox/checks';
import { startDoses } from './outbox/doses';
import { preloadStrips } from './pool/LazyStrips';

render(<App />, document.getElementById('app')!);
startOutbox();
startDoses();
startLive();
preloadStrips();
