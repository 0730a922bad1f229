import { site } from '../../live/store';
import { words } from '../../words';

/** Said where a tile has nothing to show: that the plant has none of it, or that the plant is not known yet. */
export const Nothing = ({ of }: { of: string }) => <p class="hint">{site.value ? of : words.overview.waiting}</p>;
