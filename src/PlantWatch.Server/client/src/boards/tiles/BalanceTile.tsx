import { BalanceInShort } from '../../pool/BalanceCard';
import { link } from '../../router';
import { OfPools } from './OfPools';
import type { TileProps } from './props';

/** The saturation index of each pool, or what keeps it from being one. */
export const BalanceTile = (p: TileProps) => <OfPools p={p} href={id => link('balance', id)}>{(_, view) => <BalanceInShort view={view} />}</OfPools>;
