import { useEffect } from 'preact/hooks';
import { site } from './live/store';
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
  const name = site.value?.name;
  useEffect(() => { document.title = name ? `${name} \u00b7 ${words.product}` : words.product; }, [name]);
  return <Shell><Page /></Shell>;
}
