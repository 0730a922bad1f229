import { link } from '../router';
import { words } from '../words';

/** The pages that are about one pool's water, in the order a person goes through them. */
const pages = ['pool', 'balance', 'what-if', 'dose', 'plan', 'incident'] as const;
export type WaterPage = (typeof pages)[number];

/** The row of links between the pages of one pool. */
export function WaterNav({ poolId, here }: { poolId: string; here: WaterPage }) {
  return (
    <nav class="water-nav" aria-label={words.water.nav.label}>
      {pages.map(page => (
        <a key={page} href={link(page, poolId)} aria-current={page === here ? 'page' : undefined} data-testid={`water-${page}`}>{words.water.nav.pages[page]}</a>))}
    </nav>
  );
}
