import { MorePage } from './nav/MorePage';
import { lazyPage } from './nav/lazyPage';
import { pages } from './nav/pages';
import { Missing } from './parts/Missing';
import { Shell } from './parts/Shell';
import { route } from './router';

function Page() {
  const [key = '', id = null] = route.value;
  if (key === 'more') return <MorePage />;
  const page = pages.find(p => p.key === key);
  return page ? page.show(id) : <Missing sure />;
}

const WallPage = lazyPage(() => import('./boards/wall/WallPage'), m => m.WallPage);

export function App() {
  // A display on a wall leads nowhere: it has neither head nor navigation.
  if (route.value[0] === 'wall') return <WallPage key={route.value[1]} id={route.value[1] ?? ''} />;
  return <Shell><Page /></Shell>;
}
