import { learn, learnRest } from '../src/words';

// Tests read the words as the pages do: they must be there first.
await learn('en');
await learnRest();
