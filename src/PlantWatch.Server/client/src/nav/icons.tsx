import type { JSX } from 'preact';

const icon = (d: string): JSX.Element => <svg class="nav-icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true"><path d={d} /></svg>;

export const icons = {
  water: icon('M3 9c3-3 6-3 9 0s6 3 9 0M3 16c3-3 6-3 9 0s6 3 9 0'),
  flask: icon('M9 3h6M10 3v6l-5 9a2 2 0 0 0 2 3h10a2 2 0 0 0 2-3l-5-9V3M7.5 15h9'),
  bell: icon('M6 17V11a6 6 0 0 1 12 0v6l2 2H4zM10 21h4'),
  sheet: icon('M5 3h14v18H5zM8 8h8M8 12h8M8 16h5'),
  more: icon('M4 6h16M4 12h16M4 18h16'),
};
