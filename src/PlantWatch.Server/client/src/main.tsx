import './styles/first.css';
import { language } from './format/language';
import { learn } from './words';

document.documentElement.lang = language;
// Where a node is moved by moveBefore while its class changes, Chromium leaves what is inside in its old colours: a pool that becomes a stop and goes to the front
// would keep the heading of a normal one. Without it nodes are moved as they always were. Preact looks for it each time.
delete (Element.prototype as { moveBefore?: unknown }).moveBefore;
// The words first: every part of the page reads them when it is loaded.
learn(language).then(() => import('./start')).catch(() => { setTimeout(() => location.reload(), 5_000); });
