import { words } from '../words';
import { newer, takeNewer } from './worker';

/** A newer set of pages waits: offered, never forced on somebody who is typing. */
export function NewerBar() {
  if (!newer.value) return null;
  return <div class="newer" role="status" data-testid="newer"><span>{words.offline.newer}</span> <button type="button" class="slim" data-testid="take-newer" onClick={takeNewer}>{words.offline.take}</button></div>;
}
