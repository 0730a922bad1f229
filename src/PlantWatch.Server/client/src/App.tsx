import { MorePage } from './nav/MorePage';
import { pages } from './nav/pages';
import { Shell } from './parts/Shell';
import { route } from './router';
import { words } from './words';

function Page() {
  const [key = '', id = null] = route.value;
  if (key === 'more') return <MorePage />;
  const page = pages.find(p => p.key === key);
  return page ? page.show(id) : <p class="empty">{words.pageMissing} <a href="#/">{words.back}</a></p>;
}

export function App() {
  return <Shell><Page /></Shell>;
}
