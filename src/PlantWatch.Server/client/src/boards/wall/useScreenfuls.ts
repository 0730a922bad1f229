import { useEffect, useRef, useState } from 'preact/hooks';
import { screenfuls, type Screenful } from './fit';

/** The screenfuls of a flow of tiles in a view, measured anew whenever one of them changes its size. */
export function useScreenfuls(version: string) {
  const view = useRef<HTMLDivElement>(null), flow = useRef<HTMLDivElement>(null);
  const [found, setFound] = useState<Screenful[]>([]);
  useEffect(() => {
    const v = view.current, f = flow.current;
    if (!v || !f) return;
    let frame = 0;
    const measure = () => {
      // Of the layout, which knows nothing of how the flow is moved and drawn smaller meanwhile.
      const boxes = [...f.children].map(c => { const { offsetTop: top, offsetHeight } = c as HTMLElement; return { top, bottom: top + offsetHeight }; });
      const next = screenfuls(boxes, v.clientHeight);
      setFound(was => (JSON.stringify(was) === JSON.stringify(next) ? was : next));
    };
    const watch = new ResizeObserver(() => { cancelAnimationFrame(frame); frame = requestAnimationFrame(measure); });
    for (const e of [v, f, ...f.children]) watch.observe(e);
    return () => { cancelAnimationFrame(frame); watch.disconnect(); };
  }, [version]);
  return { view, flow, found };
}
