import './styles/first.css';
import { language } from './format/language';
import { learn } from './words';

document.documentElement.lang = language;
// The words first: every part of the page reads them when it is loaded.
learn(language).then(() => import('./start')).catch(() => { setTimeout(() => location.reload(), 5_000); });
