/** The colours of the page as a canvas can use them. */
export interface Ink { ink: string; soft: string; rule: string; line: string; line2: string; envelope: string; band: string; bandEdge: string; test: string; sheet: string; attention: string }

const names: Record<keyof Ink, string> = {
  ink: '--ink', soft: '--soft', rule: '--rule', line: '--line', line2: '--line-2', envelope: '--envelope', band: '--band', bandEdge: '--band-edge', test: '--test',
  sheet: '--sheet', attention: '--attention',
};

export function readInk(host: HTMLElement): Ink {
  const probe = document.createElement('i');
  host.append(probe);
  const out = {} as Ink;
  for (const key of Object.keys(names) as (keyof Ink)[]) {
    probe.style.color = `var(${names[key]})`;
    out[key] = getComputedStyle(probe).color;
  }
  probe.remove();
  return out;
}
