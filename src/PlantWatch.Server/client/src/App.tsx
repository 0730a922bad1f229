import { useEffect } from 'preact/hooks';
import { CheckPage } from './check/CheckPage';
import { site } from './live/store';
import { Overview } from './overview/Overview';
import { Shell } from './parts/Shell';
import { route } from './router';
import { words } from './words';

function Page() {
  const [page, id] = route.value;
  switch (page) {
    case undefined: return <Overview />;
    case 'check': return <CheckPage poolId={id ?? null} />;
    default: return <p class="empty">{words.pageMissing} <a href="#/">{words.back}</a></p>;
  }
}

export function App() {
  const name = site.value?.name;
  useEffect(() => { document.title = name ? `${name} \u00b7 ${words.product}` : words.product; }, [name]);
  return <Shell><Page /></Shell>;
}
