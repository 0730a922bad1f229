import { MorePage } from './nav/MorePage';
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

export function App() {
  return <Shell><Page /></Shell>;
}
