// Hours of a week as a form holds them.
import type { Hours } from '../../ipc';
import { nextKey, type Typed } from './rows';

/** A row of hours. */
export type TypedHours = Typed<Required<Hours>>;

/** An empty row. */
export const emptyHours = (): TypedHours => ({
  key: nextKey(),
  weekdays: [],
  opens: '',
  closes: '',
  first: '',
  last: '',
});
