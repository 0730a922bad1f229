import type { JSX } from 'preact';
import type { MarkKind } from '../contract.notes';

// A shape for each kind of mark, in ink: what happened is a fact and calls nobody. A test is the diamond that stands on the line.
const shapes: Record<MarkKind, JSX.Element> = {
  unknown: <circle cx="10" cy="10" r="4" />,
  test: <path class="m-fill" d="M10 3l7 7-7 7-7-7z" />,
  dose: <path d="M10 2.5c3.4 4.6 5 7.2 5 9.5a5 5 0 0 1-10 0c0-2.3 1.6-4.9 5-9.5z" />,
  calibration: <path class="m-fill" d="M3 5h14l-7 11z" />,
  probe: <path d="M8 2.5h4v9l-2 6-2-6zM5.5 6h9" />,
  alarm: <path d="M10 2l8 8-8 8-8-8zM10 6v5M10 13v1.6" />,
  wash: <path d="M2.5 6c2.5-3 5 3 7.5 0s5 3 7.5 0M2.5 11c2.5-3 5 3 7.5 0s5 3 7.5 0M2.5 16c2.5-3 5 3 7.5 0s5 3 7.5 0" />,
  stock: <path d="M5 4h10v13H5zM5 8h10M8 4V2.5h4V4" />,
  job: <path d="M4 3h12v14H4zM7 10l2.2 2.4L13.4 7" />,
  pool: <path d="M3 4v11M17 4v11M3 8h14M3 12h14" />,
  laboratory: <path d="M8 2.5h4M8.7 2.5v5L4.5 16h11L11.3 7.5v-5" />,
  gap: <path d="M2.5 10h4M13.5 10h4M9 10h.2M11 10h.2" />,
  plan: <path d="M5 2.5h7l3.5 3.5v11.5H5zM8 9h5M8 12.5h5" />,
};

export const MarkSign = ({ kind }: { kind: MarkKind }) => <svg class="mark-sign" viewBox="0 0 20 20" width="18" height="18" aria-hidden="true" focusable="false">{shapes[kind]}</svg>;
