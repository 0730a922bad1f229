import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { Problem } from '../contract';
import type { WhatIfRequest, WhatIfView } from '../contract.whatIf';

/** How long a slider may rest before the server is asked, ms. */
const rest = 90;
const again = 3_000;
const freshen = 5_000;

export interface Imagined { answer: WhatIfView | null; problem: Problem | null; unreachable: boolean }

/**
 * Asks the server what would be. One question is under way at a time; what was asked meanwhile by the last movement is asked next, and
 * what lies between is dropped. The answer is asked for anew every few seconds, as the present water moves on, and after a failure.
 */
export function useImagined(poolId: string): Imagined & { wish: (wish: WhatIfRequest) => void } {
  const [held, hold] = useState<Imagined>({ answer: null, problem: null, unreachable: false });
  const newest = useRef<WhatIfRequest | null>(null);
  const flying = useRef(false);
  const gone = useRef(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const ask = async () => {
    clearTimeout(timer.current);
    const wanted = newest.current;
    if (flying.current || gone.current || wanted === null) return;
    // A page that nobody looks at asks for nothing; it asks again when it is looked at.
    if (document.hidden) { timer.current = setTimeout(() => void ask(), freshen); return; }
    flying.current = true;
    const answer = await post<WhatIfView>(`/pools/${encodeURIComponent(poolId)}/what-if`, wanted);
    flying.current = false;
    if (gone.current) return;
    const more = newest.current !== wanted;
    if (answer.ok) hold({ answer: answer.value, problem: null, unreachable: false });
    else hold(h => ({ answer: h.answer, problem: answer.problem, unreachable: answer.problem === null }));
    timer.current = setTimeout(() => void ask(), more ? 0 : !answer.ok && answer.problem === null ? again : freshen);
  };

  const wish = (wanted: WhatIfRequest) => {
    if (JSON.stringify(wanted) === JSON.stringify(newest.current)) return;
    newest.current = wanted;
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void ask(), rest);
  };
  useEffect(() => {
    gone.current = false;
    return () => { gone.current = true; clearTimeout(timer.current); };
  }, []);
  return { ...held, wish };
}
