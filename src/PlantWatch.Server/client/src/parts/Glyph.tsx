import type { JSX } from 'preact';
import type { PoolWord, Priority, PumpActivity, Standing } from '../contract';

// Each sign has a shape of its own, so that nobody needs to see its colour. The word always stands beside it.

const svg = (tone: string, body: JSX.Element) => (
  <svg class={`glyph tone-${tone}`} viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">{body}</svg>
);
const letter = (text: string, y = 14) => <text class="g-on" x="10" y={y} text-anchor="middle">{text}</text>;

const ring = <circle class="g-line" cx="10" cy="10" r="6.5" />;
const dashed = <><circle class="g-line g-dash" cx="10" cy="10" r="7.5" /><text class="g-ink" x="10" y="13.6" text-anchor="middle">?</text></>;
const clockFace = <><circle class="g-line" cx="10" cy="10" r="7.5" /><path class="g-line" d="M10 5.5V10l3 2.2" /></>;
const octagon = <><path class="g-fill" d="M6 1h8l5 5v8l-5 5H6l-5-5V6z" /><path class="g-cut" d="M5 10h10" /></>;
const diamond = <><path class="g-fill" d="M10 .5 19.5 10 10 19.5.5 10z" /><path class="g-cut" d="M10 5v6.2M10 13.4v2" /></>;
const triangle = <><path class="g-fill" d="M10 1.2 19.6 18.5H.4z" /><path class="g-cut" d="M10 7v5.4M10 14.4v2" /></>;
const tick = <path class="g-line" d="m4 10.5 4 4 8-9" />;

export function PoolGlyph({ state }: { state: PoolWord }) {
  switch (state) {
    case 'stop': return svg('stop', octagon);
    case 'alarm': return svg('alarm', diamond);
    case 'attention': return svg('attention', triangle);
    case 'due': return svg('due', clockFace);
    case 'normal': return svg('quiet', ring);
    default: return svg('unknown', dashed);
  }
}

export function StandingGlyph({ standing }: { standing: Standing }) {
  switch (standing) {
    case 'good': return svg('quiet', tick);
    case 'maintenance_required': return svg('due', <><rect class="g-fill" x="2" y="2" width="16" height="16" rx="2" />{letter('M')}</>);
    case 'out_of_specification': return svg('attention', <><path class="g-fill" d="M10 .8 19.8 18.6H.2z" />{letter('S', 17)}</>);
    case 'check_function': return svg('attention', <><path class="g-fill" d="M5.5 1.5h9L19 10l-4.5 8.5h-9L1 10z" />{letter('C')}</>);
    case 'failure': return svg('alarm', <><circle class="g-fill" cx="10" cy="10" r="9.2" />{letter('F')}</>);
    default: return svg('unknown', dashed);
  }
}

export function PriorityGlyph({ priority }: { priority: Priority }) {
  switch (priority) {
    case 'critical': return svg('stop', octagon);
    case 'high': return svg('alarm', diamond);
    case 'medium': return svg('attention', triangle);
    case 'low': return svg('due', <><circle class="g-fill" cx="10" cy="10" r="8" /><path class="g-cut" d="M10 5.5v6M10 13.4v1.6" /></>);
    default: return svg('quiet', <circle class="g-line" cx="10" cy="10" r="3" />);
  }
}

export function PumpGlyph({ activity }: { activity: PumpActivity }) {
  switch (activity) {
    case 'running': return svg('quiet', <path class="g-line" d="m5 3 11 7-11 7z" />);
    case 'stopped': return svg('quiet', <rect class="g-line" x="4" y="4" width="12" height="12" />);
    case 'fault': return svg('alarm', diamond);
    default: return svg('unknown', dashed);
  }
}

export const WarnGlyph = () => svg('attention', triangle);
export const TickGlyph = () => svg('quiet', tick);
