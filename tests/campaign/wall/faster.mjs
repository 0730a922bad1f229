// Makes time pass faster for a program: its clock, its timers and what it measures by. Given to Node with --import and to the browser as a script before the page's own.

/** Text of a script that lets time pass `speed` times as fast from `begin` on, both in Unix milliseconds. */
export const faster = (speed, begin) => `(() => {
  const speed = ${speed}, begin = ${begin}, { setTimeout: later, setInterval: often } = globalThis, RealDate = Date;
  const at = () => begin + (RealDate.now() - begin) * speed;
  class FastDate extends RealDate {
    constructor(...a) { if (a.length === 0) super(at()); else super(...a); }
    static now() { return at(); }
  }
  globalThis.Date = FastDate;
  globalThis.setTimeout = (f, ms = 0, ...a) => later(f, ms / speed, ...a);
  globalThis.setInterval = (f, ms = 0, ...a) => often(f, ms / speed, ...a);
  const now = performance.now.bind(performance);
  performance.now = () => now() * speed;
})();`;

if (process.env.PLANTWATCH_SPEED) (0, eval)(faster(Number(process.env.PLANTWATCH_SPEED), Number(process.env.PLANTWATCH_BEGIN)));
