import { describe, expect, it } from 'vitest';
import { fitted } from './pictures';

describe('a picture of a job', () => {
  it('is sent whole when it is small and cut to its longer side when it is not', () => {
    expect(fitted(800, 600)).toEqual({ width: 800, height: 600 });
    expect(fitted(4000, 3000)).toEqual({ width: 1600, height: 1200 });
    expect(fitted(3000, 4000)).toEqual({ width: 1200, height: 1600 });
    expect(fitted(16000, 4)).toEqual({ width: 1600, height: 1 });
  });
});
