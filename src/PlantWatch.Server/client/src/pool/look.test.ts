import { describe, expect, it } from 'vitest';
import type { Columns } from './columns';
import { looked } from './look';

const both: Columns = [[1, 2], [6, null], [8, null], [7, null], [7.1, null]];

describe('what is looked at', () => {
  it('is both lines as they come', () => expect(looked(both, 'both')).toBe(both));
  it('is what was received with its spread', () => expect(looked(both, 'raw')).toEqual([[1, 2], [6, null], [8, null], [7, null], [null, null]]));
  it('is what was corrected alone', () => expect(looked(both, 'corrected')).toEqual([[1, 2], [null, null], [null, null], [null, null], [7.1, null]]));
  it('is all there is where nothing was corrected', () => {
    const plain: Columns = [[1], [6], [8], [7], [null]];
    expect(looked(plain, 'corrected')).toBe(plain);
  });
});
