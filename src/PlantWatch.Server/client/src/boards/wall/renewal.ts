import { onLive } from '../../live/connection';
import { lookForNewer } from '../../offline/worker';

const hour = 3_600_000;
const key = 'plantwatch.renewed';

/** The address of the program that a page names; it bears a hash of its content. */
export const programOf = (html: string): string | null => /<script[^>]*type="module"[^>]*src="([^"]+)"/.exec(html)?.[1] ?? null;

const mine = () => document.querySelector('script[type="module"][src]')?.getAttribute('src') ?? null;

async function served(): Promise<string | null> {
  try {
    const answer = await fetch('/', { cache: 'no-store', signal: AbortSignal.timeout(12_000) });
    return answer.ok ? programOf(await answer.text()) : null;
  } catch { return null; }
}

/** Not twice within ten minutes: where something between here and the server hands out an old page, loading it again and again would help nobody. */
function mayLoad(): boolean {
  try {
    if (Date.now() - Number(sessionStorage.getItem(key) ?? 0) < 600_000) return false;
    sessionStorage.setItem(key, String(Date.now()));
    return true;
  } catch { return false; }
}

/**
 * Loads the page anew when the server has another one: looked at every hour and whenever the connection came back. Where the pages are kept on the device that set is asked to
 * renew itself, since what is kept answers for the server. Returns how to stop.
 */
export function renewItself(): () => void {
  const look = async () => {
    if (lookForNewer()) return;
    const other = await served();
    if (other !== null && mine() !== null && other !== mine() && mayLoad()) location.reload();
  };
  const timer = setInterval(() => void look(), hour), stop = onLive(() => void look());
  return () => { clearInterval(timer); stop(); };
}
