import { site } from '../live/store';
import { words } from '../words';

/** An address that leads nowhere, or to what this plant has none of; while the plant is not known yet, that it is waited for. */
export function Missing({ sure }: { sure?: boolean }) {
  return <div class="empty"><h1>{sure || site.value ? words.pageMissing : words.overview.waiting}</h1><p><a class="line-link" href="#/">{words.back}</a></p></div>;
}
