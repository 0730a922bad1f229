import type { Measurand, TestMethod } from '../contract';
import { link } from '../router';
import { words } from '../words';
import { oldOnes } from './old';
import { reagents } from './store';

/** Said beside the field before the test is made: afterwards it is too late. */
export function ReagentHint({ m, method }: { m: Measurand; method: TestMethod }) {
  return <>{oldOnes(reagents.value, m, method).map(r => <p key={r.id} class="notice" data-testid={`old-reagent-${m}`}><a href={link('reagents')}>{words.reagents.inForm(r.name)}</a></p>)}</>;
}
