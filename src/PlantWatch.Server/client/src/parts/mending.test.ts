import { describe, expect, it } from 'vitest';
import { fieldsOf, stillSaid } from './mending';

describe('what is to be mended', () => {
  it('is counted by fields: what is said of the whole marks none', () => expect([fieldsOf({}), fieldsOf({ form: 'x' }), fieldsOf({ ph: 'x', who: 'y', form: 'z' })]).toEqual([0, 0, 2]));
  it('stays said until its field is changed', () => expect(stillSaid({ ph: 'x', who: 'y' }, field => field === 'ph')).toEqual({ who: 'y' }));
});
