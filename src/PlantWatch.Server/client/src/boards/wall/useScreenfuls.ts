import { useEffect, useRef, useState } from 'preact/hooks';
import { screenfuls, type Box, type Screenful } from './fit';
import { boxesOf } from './measure';

/** The screenfuls of a flow of tiles in a view, measured anew whenever one of them changes its size or what it holds. */
export function useScreenfuls(version: string) {
  const view = useRef<HTMLDivElement>(null), flow = useRef<HTMLDivElement>(null);
  const [found, setFound] = useState<{ boxes: Box[]; pages: Screenful[] }>({ boxes: [], pages: [] });
  useEffect(() => {
    const v = view.current, f = flow.current;
    if (!v || !f) return;
    let frame = 0;
    const measure = () => {
      const boxes = boxesOf(f), next = { boxes, pages: screenfuls(boxes, v.clientHeight) };
      setFound(was => (JSON.stringify(was) === JSON.stringify(next) ? was : next));
    };
    const soon = () => { cancelAnimationFrame(frame); frame = requestAnimationFrame(measure); };
    const sizes = new ResizeObserver(soon), content = new MutationObserver(soon);
    for (const e of [v, f, ...f.children]) sizes.observe(e);
    content.observe(f, { childList: true, subtree: true });
    return () => { cancelAnimationFrame(frame); sizes.disconnect(); content.disconnect(); };
  }, [version]);
  return { view, flow, ...found };
}
