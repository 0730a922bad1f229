// Pages without a server: what a device can do, and what it shows then.
import type { Reach } from '../../offline/worker';

export const offline = {
  newer: 'A newer version of these pages is on this device.', take: 'Take it now',
  asHeard: (time: string) => `As last heard at ${time}.`, asHeardMore: 'Nothing here is now. Trying the server again by itself.',
  title: 'Without signal',
  reach: {
    starting: 'The pages are being put on this device; keep this one open for a moment.',
    ready: 'This device opens the pages without signal, also after it was switched off.',
    insecure: 'This address is plain http: the browser then keeps no pages. Once closed, they cannot be opened without the server. An https address with a certificate that this device trusts mends it.',
    unsupported: 'This browser keeps no pages: once closed, they cannot be opened without the server.',
    failed: 'The pages could not be put on this device: once closed, they cannot be opened without the server.',
  } satisfies Record<Reach, string>,
  can: [
    'A page that is open goes on working without signal. What you enter lies on this device until the server has answered for it, and goes out by itself.',
    'Two open tabs share what waits; one of them sends it. A thing that was sent twice is kept once.',
    'What the server refuses is set aside with its reason, holds up nothing else, and can be mended.',
  ],
  full: 'This device has no room left to keep what you enter. Free some, or stay where there is signal: without it nothing more can be kept.',
};
