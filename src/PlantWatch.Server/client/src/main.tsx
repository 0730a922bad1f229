import { render } from 'preact';
import './styles/index.css';
import { App } from './App';
import { startLive } from './live/connection';
import { startOutbox } from './outbox/checks';
import { preloadStrips } from './pool/LazyStrips';

// After an update of the server the names of the page's parts change; the open page then loads itself anew.
addEventListener('vite:preloadError', () => location.reload());

render(<App />, document.getElementById('app')!);
startOutbox();
startLive();
preloadStrips();
